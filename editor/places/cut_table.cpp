#include "editor/kit/widgets.h"
#include "editor/places/make_tables.h"
#include "editor/places/piece_words.h"
#include "model/schedule/tables.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace editor {
namespace {

using model::Index;

std::string weight_of(const model::CutRow& row, const Derived& derived) {
    if (row.pieces.empty()) return "";
    return model::weight_text(derived.weights_kg[row.pieces.front()], derived.project->shown);
}

void draw_members(const model::CutRow& row) {
    const float room = ImGui::GetContentRegionAvail().x;
    draw_text(text_to_fit(row.members, Type::small, room), Type::small, colour::quiet);
    log_item("goes to", row.members);
    draw_hint(row.members);
}

// What the saw is set to for the mitres among the words of its ends, each once: "5.1\xC2\xB0".
std::string mitre_angles(const std::string& ends) {
    constexpr std::string_view before = "mitre ";
    std::vector<std::string> angles;
    for (auto at = ends.find(before); at != std::string::npos; at = ends.find(before, at + 1)) {
        const auto from = at + before.size();
        const auto angle = ends.substr(from, ends.find(' ', from) - from) + "\xC2\xB0";
        if (std::find(angles.begin(), angles.end(), angle) == angles.end()) angles.push_back(angle);
    }
    std::string words;
    for (const auto& angle : angles) words += (words.empty() ? "" : " and ") + angle;
    return words;
}

// What it is cut from, and in a word what is done besides a square cut.
std::string section_words(const model::CutRow& row) {
    const std::string ends = row.end_a + "; " + row.end_b;
    const auto has = [&](std::string_view word) { return ends.find(word) != std::string::npos; };
    std::string words = row.section;
    if (has("mitre ")) words += ", mitred " + mitre_angles(ends);
    if (has("notched")) words += ", notched";
    if (has("outline")) words += ", shaped";
    return words;
}

std::string end_hint(const model::CutRow& row) {
    return row.section + "\ndatum end: " + row.end_a + "\nfar end: " + row.end_b;
}

void draw_cut_line(const model::CutRow& row, const Derived& derived) {
    ImGui::TableNextColumn();
    draw_text_right(std::to_string(row.quantity));
    ImGui::TableNextColumn();
    draw_text_right(model::length_text(*derived.project, row.length));
    ImGui::TableNextColumn();
    draw_text_right(weight_of(row, derived), colour::quiet);
    ImGui::TableNextColumn();
    draw_text(hand_words(row.hand), Type::small, colour::quiet);
    ImGui::TableNextColumn();
    draw_text(section_words(row));
    log_item("cut from", section_words(row));
    draw_hint(end_hint(row));
    ImGui::TableNextColumn();
    draw_members(row);
}

// On two lines, where the panel is narrow: what can be less in sight stands below.
void draw_narrow_cut_line(const model::CutRow& row, const Derived& derived) {
    draw_text(hand_words(row.hand), Type::small, colour::quiet);
    ImGui::TableNextColumn();
    draw_text_right(std::to_string(row.quantity));
    ImGui::TableNextColumn();
    draw_text_right(model::length_text(*derived.project, row.length));
    {
        const FontScope small(Type::small);
        draw_text_right(weight_of(row, derived), colour::quiet);
    }
    ImGui::TableNextColumn();
    draw_text(text_to_fit(section_words(row), Type::text, ImGui::GetContentRegionAvail().x));
    log_item("cut from", section_words(row));
    draw_hint(end_hint(row));
    draw_members(row);
}

struct CutColumns {
    ColumnWidth mark{"Mark"};
    ColumnWidth count{"Cut"};
    ColumnWidth length{"Length"};
    ColumnWidth weight{"Each"};
    ColumnWidth hand{"Hand"};
    ColumnWidth section{"From"};

    std::array<const ColumnWidth*, 6> all() const {
        return {&mark, &count, &length, &weight, &hand, &section};
    }
};

CutColumns cut_columns(const Derived& derived) {
    CutColumns columns;
    for (const auto& row : derived.cuts) {
        columns.mark.add(mark_name(derived, row.mark), Type::strong);
        columns.count.add(std::to_string(row.quantity));
        columns.length.add(model::length_text(*derived.project, row.length));
        columns.weight.add(weight_of(row, derived));
        columns.hand.add(hand_words(row.hand), Type::small);
        columns.section.add(section_words(row));
    }
    return columns;
}

void set_up(const CutColumns& columns) {
    unsigned id = 0;
    for (const auto* column : columns.all()) column->set_up(++id);
    ImGui::TableSetupColumn("Goes to", ImGuiTableColumnFlags_WidthStretch, 0.0F, ++id);
}

void set_up_narrow(const CutColumns& columns) {
    set_up_fixed("Mark", columns.mark, columns.hand, 1);
    columns.count.set_up(2);
    set_up_fixed("Length", columns.length, columns.weight, 3);
    ImGui::TableSetupColumn("From, goes to", ImGuiTableColumnFlags_WidthStretch, 0.0F, 6);
}

// Its columns, in the order of the wide table.
TableLine line_of(const model::CutRow& row, const Derived& derived) {
    const std::string mark = mark_name(derived, row.mark);
    const std::string length = model::length_text(*derived.project, row.length);
    const double weight = row.pieces.empty() ? 0.0 : derived.weights_kg[row.pieces.front()];
    return {mark + " " + std::to_string(row.quantity) + " " + length + " " +
                weight_of(row, derived) + " " + hand_words(row.hand) + " " + section_words(row) +
                " " + row.frames + " " + row.members,
            {mark, static_cast<double>(row.quantity), row.length.mm(), weight, hand_words(row.hand),
             section_words(row), row.members}};
}

std::vector<TableLine> lines_of(const Derived& derived) {
    std::vector<TableLine> lines;
    for (const auto& row : derived.cuts) lines.push_back(line_of(row, derived));
    return lines;
}

bool draw_line(const LineAt& at, const Derived& derived, bool narrow) {
    const auto& row = derived.cuts[at.line];
    const std::string name = "cut " + std::to_string(at.line + 1);
    const bool clicked = draw_line_start(name, mark_name(derived, row.mark), at.is_marked);
    const ItemScope line(name);
    narrow ? draw_narrow_cut_line(row, derived) : draw_cut_line(row, derived);
    return clicked;
}

}  // namespace

void draw_cut_table(const Derived& derived,
                    const std::vector<Index>& chosen,
                    TableOrder& order,
                    Selection& selection) {
    bring_up_to_date(order, worked_out_of(derived), [&] { return lines_of(derived); });
    const ItemScope items("cuts");
    draw_search("Find", order);
    const CutColumns& columns = kept_columns(order, [&] { return cut_columns(derived); });
    constexpr float least_room = 150.0F;  // less holds hardly one name
    const bool narrow = is_narrow(columns.all(), least_room);
    const TableScope table(narrow ? "narrow cuts" : "cuts", narrow ? 4 : 7, sorted_table_flags);
    if (!table) return;
    narrow ? set_up_narrow(columns) : set_up(columns);
    draw_heads(order);
    draw_lines(order, selection,
               {[&](std::size_t line) {
                    const auto& row = derived.cuts[line];
                    return is_chosen(chosen, derived, row.mark, row.hand);
                },
                [&](std::size_t line) {
                    return selection_of(*derived.project, derived.resolved,
                                        derived.cuts[line].pieces);
                },
                [&](const LineAt& at) { return draw_line(at, derived, narrow); }});
}

}  // namespace editor
