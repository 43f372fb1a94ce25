#include "engine/drawing/dxf.h"

#include "engine/drawing/printable_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <limits>

namespace engine {
namespace {

constexpr double farthest = 1.0e6;  // mm

struct LayerRow {
    DxfLayer layer;
    std::string_view name;
    int colour;  // of the index that all readers share: 1 red, 3 green, 4 cyan, 5 blue, 6 magenta,
                 // 7 black, 8 grey
};

constexpr std::array<LayerRow, 7> layer_rows{{{DxfLayer::outline, "OUTLINE", 7},
                                              {DxfLayer::cut_out, "CUT_OUT", 1},
                                              {DxfLayer::hole, "HOLE", 5},
                                              {DxfLayer::tapped, "HOLE_TAP", 6},
                                              {DxfLayer::matched, "HOLE_MATCH", 4},
                                              {DxfLayer::fold, "FOLD", 3},
                                              {DxfLayer::words, "WORDS", 8}}};

bool is_place(PagePoint p) {
    return std::isfinite(p.x) && std::isfinite(p.y) && std::abs(p.x) <= farthest &&
           std::abs(p.y) <= farthest;
}

bool is_sound(const DxfDrawing& drawing) {
    const auto is_loop = [](const DxfLoop& loop) {
        return loop.corners.size() >= 3 &&
               std::all_of(loop.corners.begin(), loop.corners.end(), is_place);
    };
    const auto is_circle = [](const DxfCircle& circle) {
        return is_place(circle.centre) && circle.radius > 0.0 && circle.radius <= farthest;
    };
    const auto is_line = [](const DxfLine& line) {
        return is_place(line.from) && is_place(line.to);
    };
    const auto is_text = [](const DxfText& text) {
        return is_place(text.at) && text.height > 0.0 && text.height <= farthest;
    };
    return std::ranges::all_of(drawing.loops, is_loop) &&
           std::ranges::all_of(drawing.circles, is_circle) &&
           std::ranges::all_of(drawing.lines, is_line) &&
           std::ranges::all_of(drawing.texts, is_text);
}

// To the nanometre, the same on every machine.
std::string dxf_number(double value) {
    constexpr double steps = 1.0e6;
    const double rounded = std::round(value * steps) / steps;
    std::array<char, 48> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(),
                                   rounded == 0.0 ? 0.0 : rounded, std::chars_format::fixed, 6)
                         .ptr;
    return {text.data(), end};
}

// What release 12 knows is ASCII; other characters are written by their number.
std::string dxf_words(std::string_view words) {
    std::string made;
    const auto characters = characters_of(printable_text(words));
    for (const char32_t character : characters) {
        if (character >= 0x20 && character < 0x7F) {
            made += static_cast<char>(character);
            continue;
        }
        std::array<char, 16> text{};
        std::snprintf(text.data(), text.size(), "\\U+%04X", static_cast<unsigned>(character));
        made += text.data();
    }
    return made;
}

struct Extents {
    PagePoint least{std::numeric_limits<double>::max(), std::numeric_limits<double>::max()};
    PagePoint most{std::numeric_limits<double>::lowest(), std::numeric_limits<double>::lowest()};

    void take(PagePoint p, double around = 0.0) {
        least = {std::min(least.x, p.x - around), std::min(least.y, p.y - around)};
        most = {std::max(most.x, p.x + around), std::max(most.y, p.y + around)};
    }
};

Extents extents_of(const DxfDrawing& drawing) {
    Extents extents;
    for (const auto& loop : drawing.loops)
        for (const auto& corner : loop.corners) extents.take(corner);
    for (const auto& circle : drawing.circles) extents.take(circle.centre, circle.radius);
    for (const auto& line : drawing.lines) {
        extents.take(line.from);
        extents.take(line.to);
    }
    for (const auto& text : drawing.texts) extents.take(text.at);
    if (extents.least.x > extents.most.x) extents = {{0, 0}, {0, 0}};
    return extents;
}

class DxfWriter {
public:
    std::string text_of(const DxfDrawing& drawing) && {
        write_header(extents_of(drawing));
        write_tables();
        group(0, "SECTION");
        group(2, "ENTITIES");
        for (const auto& loop : drawing.loops) write(loop);
        for (const auto& circle : drawing.circles) write(circle);
        for (const auto& line : drawing.lines) write(line);
        for (const auto& text : drawing.texts) write(text);
        group(0, "ENDSEC");
        group(0, "EOF");
        return std::move(text_);
    }

private:
    void group(int code, std::string_view value) {
        const std::string number = std::to_string(code);
        text_.append(3 - std::min<std::size_t>(number.size(), 3), ' ');
        text_ += number;
        text_ += "\r\n";
        text_ += value;
        text_ += "\r\n";
    }
    void group(int code, int value) { group(code, std::to_string(value)); }
    void place(int code, PagePoint p) {
        group(code, dxf_number(p.x));
        group(code + 10, dxf_number(p.y));
        group(code + 20, dxf_number(0.0));
    }

    void write_header(const Extents& extents) {
        group(0, "SECTION");
        group(2, "HEADER");
        group(9, "$ACADVER");
        group(1, "AC1009");
        group(9, "$INSBASE");
        place(10, {0, 0});
        group(9, "$EXTMIN");
        place(10, extents.least);
        group(9, "$EXTMAX");
        place(10, extents.most);
        group(0, "ENDSEC");
    }

    void write_tables() {
        group(0, "SECTION");
        group(2, "TABLES");
        group(0, "TABLE");
        group(2, "LTYPE");
        group(70, 1);
        group(0, "LTYPE");
        group(2, "CONTINUOUS");
        group(70, 0);
        group(3, "Solid line");
        group(72, 65);
        group(73, 0);
        group(40, dxf_number(0.0));
        group(0, "ENDTAB");
        group(0, "TABLE");
        group(2, "LAYER");
        group(70, static_cast<int>(layer_rows.size()) + 1);
        write_layer("0", 7);
        for (const auto& row : layer_rows) write_layer(row.name, row.colour);
        group(0, "ENDTAB");
        write_style();
        group(0, "ENDSEC");
    }

    void write_layer(std::string_view name, int colour) {
        group(0, "LAYER");
        group(2, name);
        group(70, 0);
        group(62, colour);
        group(6, "CONTINUOUS");
    }

    void write_style() {
        group(0, "TABLE");
        group(2, "STYLE");
        group(70, 1);
        group(0, "STYLE");
        group(2, "STANDARD");
        group(70, 0);
        group(40, dxf_number(0.0));
        group(41, dxf_number(1.0));
        group(50, dxf_number(0.0));
        group(71, 0);
        group(42, dxf_number(2.5));
        group(3, "txt");
        group(4, "");
        group(0, "ENDTAB");
    }

    void write(const DxfLoop& loop) {
        group(0, "POLYLINE");
        group(8, name_of(loop.layer));
        group(66, 1);
        place(10, {0, 0});
        group(70, 1);  // closed
        for (const auto& corner : loop.corners) {
            group(0, "VERTEX");
            group(8, name_of(loop.layer));
            place(10, corner);
        }
        group(0, "SEQEND");
        group(8, name_of(loop.layer));
    }

    void write(const DxfCircle& circle) {
        group(0, "CIRCLE");
        group(8, name_of(circle.layer));
        place(10, circle.centre);
        group(40, dxf_number(circle.radius));
    }

    void write(const DxfLine& line) {
        group(0, "LINE");
        group(8, name_of(line.layer));
        place(10, line.from);
        place(11, line.to);
    }

    void write(const DxfText& text) {
        group(0, "TEXT");
        group(8, name_of(DxfLayer::words));
        place(10, text.at);
        group(40, dxf_number(text.height));
        group(1, dxf_words(text.words));
        group(7, "STANDARD");
    }

    std::string text_;
};

}  // namespace

std::string_view name_of(DxfLayer layer) {
    for (const auto& row : layer_rows)
        if (row.layer == layer) return row.name;
    return "0";
}

Result<std::string> dxf_text(const DxfDrawing& drawing) {
    if (!is_sound(drawing)) {
        return Error{ErrorCode::invalid_value, "",
                     "a shape cannot be written as DXF: a number of it is none or too large, or it "
                     "has no size"};
    }
    return DxfWriter().text_of(drawing);
}

}  // namespace engine
