#include "engine/drawing/dxf.h"

#include "engine/drawing/dxf_groups.h"

#include <algorithm>
#include <array>
#include <cmath>
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
        out_.group(0, "SECTION");
        out_.group(2, "ENTITIES");
        for (const auto& loop : drawing.loops) write(loop);
        for (const auto& circle : drawing.circles) write(circle);
        for (const auto& line : drawing.lines) write(line);
        for (const auto& text : drawing.texts) write(text);
        out_.group(0, "ENDSEC");
        out_.group(0, "EOF");
        return std::move(out_).take();
    }

private:
    void write_header(const Extents& extents) {
        out_.group(0, "SECTION");
        out_.group(2, "HEADER");
        out_.group(9, "$ACADVER");
        out_.group(1, "AC1009");
        out_.group(9, "$INSBASE");
        out_.place(10, {0, 0});
        out_.group(9, "$EXTMIN");
        out_.place(10, extents.least);
        out_.group(9, "$EXTMAX");
        out_.place(10, extents.most);
        out_.group(0, "ENDSEC");
    }

    void write_tables() {
        out_.group(0, "SECTION");
        out_.group(2, "TABLES");
        begin_table("LTYPE", 1);
        out_.group(0, "LTYPE");
        out_.group(2, "CONTINUOUS");
        out_.group(70, 0);
        out_.group(3, "Solid line");
        out_.group(72, 65);
        out_.group(73, 0);
        out_.number(40, 0.0);
        out_.group(0, "ENDTAB");
        begin_table("LAYER", static_cast<int>(layer_rows.size()) + 1);
        write_layer("0", 7);
        for (const auto& row : layer_rows) write_layer(row.name, row.colour);
        out_.group(0, "ENDTAB");
        write_style();
        out_.group(0, "ENDSEC");
    }

    void begin_table(std::string_view name, int rows) {
        out_.group(0, "TABLE");
        out_.group(2, name);
        out_.group(70, rows);
    }

    void write_layer(std::string_view name, int colour) {
        out_.group(0, "LAYER");
        out_.group(2, name);
        out_.group(70, 0);
        out_.group(62, colour);
        out_.group(6, "CONTINUOUS");
    }

    void write_style() {
        begin_table("STYLE", 1);
        out_.group(0, "STYLE");
        out_.group(2, "STANDARD");
        out_.group(70, 0);
        out_.number(40, 0.0);
        out_.number(41, 1.0);
        out_.number(50, 0.0);
        out_.group(71, 0);
        out_.number(42, 2.5);
        out_.group(3, "txt");
        out_.group(4, "");
        out_.group(0, "ENDTAB");
    }

    void write(const DxfLoop& loop) {
        out_.group(0, "POLYLINE");
        out_.group(8, name_of(loop.layer));
        out_.group(66, 1);
        out_.place(10, {0, 0});
        out_.group(70, 1);  // closed
        for (const auto& corner : loop.corners) {
            out_.group(0, "VERTEX");
            out_.group(8, name_of(loop.layer));
            out_.place(10, corner);
        }
        out_.group(0, "SEQEND");
        out_.group(8, name_of(loop.layer));
    }

    void write(const DxfCircle& circle) {
        out_.group(0, "CIRCLE");
        out_.group(8, name_of(circle.layer));
        out_.place(10, circle.centre);
        out_.number(40, circle.radius);
    }

    void write(const DxfLine& line) {
        out_.group(0, "LINE");
        out_.group(8, name_of(line.layer));
        out_.place(10, line.from);
        out_.place(11, line.to);
    }

    void write(const DxfText& text) {
        out_.group(0, "TEXT");
        out_.group(8, name_of(DxfLayer::words));
        out_.place(10, text.at);
        out_.number(40, text.height);
        out_.group(1, dxf_words(text.words));
        out_.group(7, "STANDARD");
    }

    DxfGroups out_;
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
