#include "editor/places/make.h"

#include "editor/kit/term.h"
#include "editor/kit/widgets.h"
#include "editor/places/cautions.h"
#include "editor/places/piece_words.h"
#include "editor/places/table_columns.h"
#include "model/schedule/tables.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace editor {
namespace {

using model::Index;

constexpr ImGuiTableFlags list_flags =
    ImGuiTableFlags_ScrollY | ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_RowBg;

void draw_header() {
    ImGui::TableSetupScrollFreeze(0, 1);
    const FontScope small(Type::small);
    const ColourScope quiet(ImGuiCol_Text, colour::quiet);
    draw_term_headings();
}

std::string mark_name(const Derived& derived, Index mark) {
    return mark < derived.resolved.marks.size() ? derived.resolved.marks[mark].name : "";
}

std::vector<Index> pieces_of(const Derived& derived, Index mark, model::Hand hand) {
    std::vector<Index> pieces;
    for (Index i = 0; i < derived.resolved.pieces.size(); ++i) {
        const auto& piece = derived.resolved.pieces[i];
        if (piece.mark == mark && piece.hand == hand) pieces.push_back(i);
    }
    return pieces;
}

bool is_chosen(const std::vector<Index>& chosen,
               const Derived& derived,
               Index mark,
               model::Hand hand) {
    return std::any_of(chosen.begin(), chosen.end(), [&](Index i) {
        return derived.resolved.pieces[i].mark == mark && derived.resolved.pieces[i].hand == hand;
    });
}

// Begins a line that can be chosen; the first cell's text comes with it.
bool draw_line_start(const std::string& name, const std::string& text, bool chosen) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const bool clicked = draw_row(name, " ", chosen, true).clicked;
    ImGui::SameLine(0, 0);
    draw_text(text, Type::strong);
    return clicked;
}

// Less room than that is left beside columns of these widths.
bool is_narrow(std::span<const ColumnWidth* const> columns, float least_room) {
    const float padding = 2 * ImGui::GetStyle().CellPadding.x + scaled(2);
    float taken = padding;
    for (const auto* column : columns) taken += column->width() + padding;
    return ImGui::GetContentRegionAvail().x - taken < scaled(least_room);
}

// A column that holds two things, one below the other.
void set_up_fixed(const char* name, const ColumnWidth& above, const ColumnWidth& below) {
    const float heading = size_of_text(name, Type::small).x;
    ImGui::TableSetupColumn(name, ImGuiTableColumnFlags_WidthFixed,
                            std::max({heading, above.width(), below.width()}) + scaled(2));
}

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
    for (const auto* column : columns.all()) column->set_up();
    ImGui::TableSetupColumn("Goes to", ImGuiTableColumnFlags_WidthStretch);
}

void set_up_narrow(const CutColumns& columns) {
    set_up_fixed("Mark", columns.mark, columns.hand);
    columns.count.set_up();
    set_up_fixed("Length", columns.length, columns.weight);
    ImGui::TableSetupColumn("From, goes to", ImGuiTableColumnFlags_WidthStretch);
}

void draw_cuts(const Derived& derived, const std::vector<Index>& chosen, Selection& selection) {
    const ItemScope items("cuts");
    const CutColumns columns = cut_columns(derived);
    constexpr float least_room = 150.0F;  // less holds hardly one name
    const bool narrow = is_narrow(columns.all(), least_room);
    const TableScope table(narrow ? "narrow cuts" : "cuts", narrow ? 4 : 7, list_flags);
    if (!table) return;
    narrow ? set_up_narrow(columns) : set_up(columns);
    draw_header();
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(derived.cuts.size()));
    while (clipper.Step()) {
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
            const auto& row = derived.cuts[static_cast<std::size_t>(i)];
            const IdScope id(i);
            const bool marked = is_chosen(chosen, derived, row.mark, row.hand);
            const std::string name = "cut " + std::to_string(i + 1);
            if (draw_line_start(name, mark_name(derived, row.mark), marked)) {
                selection = selection_of(*derived.project, derived.resolved, row.pieces);
            }
            const ItemScope line(name);
            narrow ? draw_narrow_cut_line(row, derived) : draw_cut_line(row, derived);
        }
    }
}

std::string datum_side(const model::DrillRow& row) {
    return row.datum_end == model::TableEnd::left ? "left" : "right";
}

void draw_mark(const model::DrillRow& row, const Derived& derived) {
    draw_text(mark_name(derived, row.mark), Type::strong);
    if (row.hand != model::Hand::opposite) return;
    ImGui::SameLine(0, scaled(4));
    draw_text("opp.", Type::small, colour::amber);
    draw_hint("The opposite hand: a mirror image");
}

void draw_work(const model::DrillRow& row) {
    const bool plain = row.operation == model::HoleOperation::drill;
    draw_text(model::name_of(row.operation), plain ? colour::quiet : colour::amber);
    log_item("work", model::name_of(row.operation));
}

void draw_mates(const model::DrillRow& row, Type type) {
    const float room = ImGui::GetContentRegionAvail().x;
    draw_text(text_to_fit(row.mates_with, type, room), type, colour::quiet);
    draw_hint(row.mates_with);
}

void draw_drill_line(const model::DrillRow& row, const Derived& derived, bool is_new_fence) {
    const auto& project = *derived.project;
    ImGui::TableNextColumn();
    if (is_new_fence) draw_text(model::length_text(project, row.gauge), Type::strong);
    ImGui::TableNextColumn();
    draw_mark(row, derived);
    ImGui::TableNextColumn();
    draw_text(row.leg, colour::quiet);
    ImGui::TableNextColumn();
    draw_text_right(model::length_text(project, row.from_datum));
    ImGui::TableNextColumn();
    draw_text(datum_side(row), colour::quiet);
    ImGui::TableNextColumn();
    draw_work(row);
    ImGui::TableNextColumn();
    draw_mates(row, Type::text);
}

// On two lines, where the panel is narrow.
void draw_narrow_drill_line(const model::DrillRow& row, const Derived& derived, bool is_new_fence) {
    const auto& project = *derived.project;
    draw_text(is_new_fence ? model::length_text(project, row.gauge) : " ", Type::strong);
    ImGui::TableNextColumn();
    draw_mark(row, derived);
    draw_text(row.leg, Type::small, colour::quiet);
    ImGui::TableNextColumn();
    draw_text_right(model::length_text(project, row.from_datum));
    {
        const FontScope small(Type::small);
        draw_text_right(datum_side(row), colour::quiet);
    }
    ImGui::TableNextColumn();
    draw_work(row);
    draw_mates(row, Type::small);
}

struct DrillColumns {
    ColumnWidth drill{"Drill"};
    ColumnWidth fence{"Fence"};
    ColumnWidth mark{"Mark"};
    ColumnWidth leg{"Leg"};
    ColumnWidth distance{"From datum"};
    ColumnWidth datum{"Datum"};
    ColumnWidth work{"Work"};

    std::array<const ColumnWidth*, 7> all() const {
        return {&drill, &fence, &mark, &leg, &distance, &datum, &work};
    }
};

DrillColumns drill_columns(const Derived& derived) {
    DrillColumns columns;
    columns.datum.add("right");
    for (const auto& row : derived.drills) {
        columns.drill.add(row.drill, Type::strong);
        columns.fence.add(model::length_text(*derived.project, row.gauge), Type::strong);
        columns.mark.add(
            mark_name(derived, row.mark) + (row.hand == model::Hand::opposite ? " opp." : ""),
            Type::strong);
        columns.leg.add(row.leg);
        columns.distance.add(model::length_text(*derived.project, row.from_datum));
        columns.work.add(model::name_of(row.operation));
    }
    return columns;
}

void set_up(const DrillColumns& columns) {
    for (const auto* column : columns.all()) column->set_up();
    ImGui::TableSetupColumn("Meets", ImGuiTableColumnFlags_WidthStretch);
}

void set_up_narrow(const DrillColumns& columns) {
    set_up_fixed("Drill, fence", columns.drill, columns.fence);
    set_up_fixed("Mark, leg", columns.mark, columns.leg);
    columns.distance.set_up();
    ImGui::TableSetupColumn("Work, meets", ImGuiTableColumnFlags_WidthStretch);
}

void draw_drills(const Derived& derived, const std::vector<Index>& chosen, Selection& selection) {
    draw_wrapped(
        "Heel against the fence, the leg flat on its outer face, the other leg standing "
        "along the fence. Distances run from the datum end, which lies at the hand given.",
        Type::small, colour::quiet);
    const ItemScope items("drills");
    const DrillColumns columns = drill_columns(derived);
    const bool narrow = is_narrow(columns.all(), 60.0F);
    const TableScope table(narrow ? "narrow drills" : "drills", narrow ? 4 : 8, list_flags);
    if (!table) return;
    narrow ? set_up_narrow(columns) : set_up(columns);
    draw_header();
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(derived.drills.size()));
    while (clipper.Step()) {
        for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i) {
            const auto& row = derived.drills[static_cast<std::size_t>(i)];
            // The first line that shows says drill and fence again; the clipper also draws line 0
            // alone, to measure it.
            const bool is_first = i == 0 || (i == clipper.DisplayStart && i > 1);
            const auto* before = is_first ? nullptr : &row - 1;
            const bool new_drill = before == nullptr || before->drill != row.drill;
            const bool new_fence = new_drill || before->fence != row.fence;
            const IdScope id(i);
            const bool marked = is_chosen(chosen, derived, row.mark, row.hand);
            if (draw_line_start("drill " + std::to_string(i + 1), new_drill ? row.drill : " ",
                                marked)) {
                selection = selection_of(*derived.project, derived.resolved,
                                         pieces_of(derived, row.mark, row.hand));
            }
            const ItemScope line("drill " + std::to_string(i + 1));
            narrow ? draw_narrow_drill_line(row, derived, new_fence)
                   : draw_drill_line(row, derived, new_fence);
        }
    }
}

void draw_choice(const char* name, const std::string& text, ShopTable which, ShopTable& table) {
    const bool is_on = table == which;
    if (draw_button(name, {.text = text, .weight = is_on ? Weight::main : Weight::plain})) {
        table = which;
    }
    ImGui::SameLine();
}

}  // namespace

void draw_make(const Area& area, const Derived& derived, ShopTable& table, Selection& selection) {
    const PanelScope panel("Make", area);
    draw_choice("Cut list", "Cut list \xC2\xB7 " + std::to_string(derived.summary.pieces),
                ShopTable::cuts, table);
    draw_choice("Drilling", "Drilling \xC2\xB7 " + std::to_string(derived.drills.size()),
                ShopTable::drills, table);
    ImGui::NewLine();
    const auto chosen = selected_pieces(*derived.project, derived.resolved, selection);
    draw_caution(table == ShopTable::cuts ? Work::cutting : Work::drilling);
    if (table == ShopTable::drills) draw_caution(Work::riveting);
    if (table == ShopTable::cuts) {
        draw_cuts(derived, chosen, selection);
    } else {
        draw_drills(derived, chosen, selection);
    }
}

}  // namespace editor
