#include "editor/places/price_rows.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <array>

namespace editor {
namespace {

constexpr std::size_t column_count = 4;

struct Line {
    std::string text;
    Type type = Type::small;
    ImU32 ink = colour::quiet;
};

// Figures stand in columns where the panel is wide enough; lines of text are wrapped.
struct RowText {
    std::array<std::string, column_count> figures;
    bool has_figures = false;
    std::vector<Line> lines;  // below the figures
};

std::string counted(int by, const char* one, const char* many) {
    const auto words = model::count_change_words(by, one, many);
    return words.empty() ? std::string("\xC2\xB1") + "0 " + many : words;
}

// Whether the same is cut, drilled and set as now.
bool is_alike(const Price& price) {
    return price.pieces == 0 && price.holes == 0 && price.fasteners == 0 && price.parts.empty() &&
           price.lengths.empty();
}

bool is_free(const Price& price) {
    return is_alike(price) && price.warnings.empty() && price.mends == 0;
}

std::string now_words(const Derived& now) {
    const auto& tally = now.tally;
    return std::to_string(model::piece_count(tally)) + " pieces, " + std::to_string(tally.holes) +
           " holes, " + std::to_string(model::fastener_count(tally)) + " fasteners, " +
           model::weight_text(tally.weight_kg, now.project->shown);
}

void add_figures(RowText& row, const Price& price, const Derived& now) {
    auto weight = model::weight_change_words(price.weight_kg, now.project->shown);
    if (weight.empty()) weight = "same weight";
    row.figures = {counted(price.pieces, "piece", "pieces"), counted(price.holes, "hole", "holes"),
                   counted(price.fasteners, "fastener", "fasteners"), std::move(weight)};
    row.has_figures = true;
}

void add_warnings(RowText& row, const Price& price, const std::string& here) {
    constexpr std::size_t most_told = 2;
    const auto& warnings = price.warnings;
    for (std::size_t i = 0; i < warnings.size() && i < most_told; ++i) {
        const auto& it = warnings[i];
        const bool is_elsewhere = !it.where.empty() && it.where != here;
        row.lines.push_back({(is_elsewhere ? it.where + " \xE2\x80\x94 " : "") + it.what,
                             Type::small, it.is_error ? colour::red : colour::amber});
    }
    if (warnings.size() > most_told) {
        row.lines.push_back(
            {"and " + std::to_string(warnings.size() - most_told) + " more kinds of things to mend",
             Type::small, colour::amber});
    }
    if (price.mends > 0) {
        row.lines.push_back({price.mends == 1 ? "mends one thing that is to mend now"
                                              : "mends " + std::to_string(price.mends) +
                                                    " things that are to mend now",
                             Type::small, colour::ink});
    }
}

RowText text_of(const Choice& choice,
                const Price* price,
                const Derived& now,
                const std::string& here) {
    RowText row;
    if (choice.is_now) {
        row.lines.push_back({"now: " + now_words(now), Type::small, colour::dye});
        return row;
    }
    if (price == nullptr) {
        row.lines.push_back({"being worked out\xE2\x80\xA6"});
        return row;
    }
    if (!price->refused.empty()) {
        row.lines.push_back({price->refused, Type::small, colour::red});
        return row;
    }
    if (is_free(*price)) {
        row.lines.push_back({"no difference here"});
        return row;
    }
    if (!is_alike(*price)) add_figures(row, *price, now);
    std::string detail = price->parts;
    if (!price->lengths.empty()) detail += (detail.empty() ? "" : "; ") + price->lengths;
    if (!detail.empty()) row.lines.push_back({detail});
    add_warnings(row, *price, here);
    return row;
}

// ---- drawing ------------------------------------------------------------------------------------

using ColumnWidths = std::array<float, column_count>;

// As wide as the widest figure of all rows; all zero where they do not fit side by side.
ColumnWidths column_widths(const std::vector<RowText>& rows, float room) {
    ColumnWidths widths{};
    float all = 0.0F;
    for (std::size_t i = 0; i < column_count; ++i) {
        for (const auto& row : rows) {
            widths[i] = std::max(widths[i], size_of_text(row.figures[i], Type::small).x);
        }
        all += widths[i];
    }
    const float gap = scaled(14);
    if (all + gap * (column_count - 1) > room) return {};
    for (auto& width : widths) width += gap;
    return widths;
}

std::string in_one_line(const RowText& row) {
    std::string text;
    for (const auto& figure : row.figures) text += (text.empty() ? "" : ", ") + figure;
    return text;
}

ImVec2 wrapped_size(const Line& line, float room) {
    const ImFont* face = font(line.type);
    return face->CalcTextSizeA(face->FontSize, 1.0e6F, room, line.text.c_str());
}

// The lines under the name, with the figures among them where they have no columns.
std::vector<Line> lines_of(const Choice& choice, const RowText& row, bool has_columns) {
    std::vector<Line> lines;
    if (!choice.what.empty()) lines.push_back({choice.what});
    if (row.has_figures && !has_columns) {
        lines.push_back({in_one_line(row), Type::small, colour::ink});
    }
    lines.insert(lines.end(), row.lines.begin(), row.lines.end());
    return lines;
}

float height_of(const std::vector<Line>& lines, bool has_figure_line, float room) {
    float height = scaled(6 + 19 + 5);
    if (has_figure_line) height += scaled(17);
    for (const auto& line : lines) height += wrapped_size(line, room).y + scaled(2);
    return height;
}

void draw_mark(ImDrawList& on, ImVec2 middle, bool is_now) {
    on.AddCircleFilled(middle, scaled(6.5F), colour::sheet, 20);
    on.AddCircle(middle, scaled(6.5F), is_now ? colour::dye : colour::edge, 20, scaled(1.2F));
    if (is_now) on.AddCircleFilled(middle, scaled(3.5F), colour::dye, 16);
}

void draw_figures(ImDrawList& on, ImVec2 at, const RowText& row, const ColumnWidths& widths) {
    for (std::size_t i = 0; i < column_count; ++i) {
        const bool is_same =
            row.figures[i].rfind("\xC2\xB1", 0) == 0 || row.figures[i].rfind("same", 0) == 0;
        draw_text_at(on, at, row.figures[i], Type::small, is_same ? colour::quiet : colour::ink);
        at.x += widths[i];
    }
}

void draw_lines(ImDrawList& on, ImVec2 at, const std::vector<Line>& lines, float room) {
    for (const auto& line : lines) {
        const ImFont* face = font(line.type);
        on.AddText(face, face->FontSize, at, line.ink, line.text.c_str(), nullptr, room);
        at.y += wrapped_size(line, room).y + scaled(2);
    }
}

std::string whole_text(const RowText& row) {
    std::string text = row.has_figures ? in_one_line(row) : std::string();
    for (const auto& line : row.lines) text += (text.empty() ? "" : "; ") + line.text;
    return text;
}

bool draw_one(const std::string& group,
              const Choice& choice,
              const RowText& row,
              const ColumnWidths& widths) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const float indent = scaled(28);
    const float room = width - indent - scaled(8);
    const bool has_columns = widths[0] > 0.0F;
    const bool has_figure_line = row.has_figures && has_columns;
    const auto lines = lines_of(choice, row, has_columns);
    const float height = height_of(lines, has_figure_line, room);
    const std::string name = group + ": " + choice.name;
    const bool clicked = ImGui::InvisibleButton(name.c_str(), {width, height});
    const bool is_hot = ImGui::IsItemHovered();
    log_item(name, whole_text(row));
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 end{at.x + width, at.y + height};
    if (choice.is_now || is_hot) {
        on.AddRectFilled(at, end, choice.is_now ? colour::dye_wash : colour::note_ground,
                         scaled(3));
    }
    draw_mark(on, {at.x + scaled(14), at.y + scaled(15)}, choice.is_now);
    ImVec2 pen{at.x + indent, at.y + scaled(6)};
    draw_text_at(on, pen, choice.name, Type::strong, choice.is_now ? colour::dye : colour::ink);
    pen.y += scaled(19);
    const std::size_t above = choice.what.empty() ? 0 : 1;
    const std::vector<Line> first(lines.begin(), lines.begin() + static_cast<int>(above));
    const std::vector<Line> rest(lines.begin() + static_cast<int>(above), lines.end());
    draw_lines(on, pen, first, room);
    for (const auto& line : first) pen.y += wrapped_size(line, room).y + scaled(2);
    if (has_figure_line) {
        draw_figures(on, pen, row, widths);
        pen.y += scaled(17);
    }
    draw_lines(on, pen, rest, room);
    return clicked && !choice.is_now;
}

}  // namespace

const Choice* draw_price_rows(const PriceRowsLook& look,
                              const std::vector<Choice>& choices,
                              const Derived& now,
                              const model::Catalogue& catalogue,
                              PriceBoard& board) {
    std::vector<RowText> rows;
    for (const auto& choice : choices) {
        const Price* price = choice.is_now
                                 ? nullptr
                                 : price_on(board, look.group + look.about, now, catalogue, choice);
        rows.push_back(text_of(choice, price, now, look.here));
    }
    const auto widths = column_widths(rows, ImGui::GetContentRegionAvail().x - scaled(36));
    const Choice* clicked = nullptr;
    const StyleScope tight(ImGuiStyleVar_ItemSpacing, scaled(8, 2));
    for (std::size_t i = 0; i < choices.size(); ++i) {
        if (draw_one(look.group, choices[i], rows[i], widths)) clicked = &choices[i];
    }
    return clicked;
}

}  // namespace editor
