#include "editor/kit/widgets.h"
#include "editor/places/make_tables.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace editor {
namespace {

using model::Index;

std::string datum_side(const model::DrillRow& row) {
    return row.datum_end == model::TableEnd::left ? "left" : "right";
}

// How many pieces are drilled so, "x6"; empty for a single one.
std::string pieces_words(const model::DrillRow& row) {
    return row.pieces > 1 ? "x" + std::to_string(row.pieces) : "";
}

// "A7 opp. x6", to reckon how wide it is and to find it.
std::string mark_words(const model::DrillRow& row, const Derived& derived) {
    std::string words = mark_name(derived, row.mark);
    if (row.hand == model::Hand::opposite) words += " opp.";
    if (row.pieces > 1) words += " " + pieces_words(row);
    return words;
}

void draw_mark(const model::DrillRow& row, const Derived& derived) {
    draw_text(mark_name(derived, row.mark), Type::strong);
    if (row.hand == model::Hand::opposite) {
        ImGui::SameLine(0, scaled(4));
        draw_text("opp.", Type::small, colour::amber);
        draw_hint("The opposite hand: a mirror image");
    }
    if (row.pieces < 2) return;
    ImGui::SameLine(0, scaled(4));
    draw_text(pieces_words(row), Type::small, colour::quiet);
    log_item("pieces", pieces_words(row));
    draw_hint(std::to_string(row.pieces) + " pieces are drilled so");
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
        columns.mark.add(mark_words(row, derived), Type::strong);
        columns.leg.add(row.leg);
        columns.distance.add(model::length_text(*derived.project, row.from_datum));
        columns.work.add(model::name_of(row.operation));
    }
    return columns;
}

void set_up(const DrillColumns& columns) {
    unsigned id = 0;
    for (const auto* column : columns.all()) column->set_up(++id);
    ImGui::TableSetupColumn("Meets", ImGuiTableColumnFlags_WidthStretch, 0.0F, ++id);
}

void set_up_narrow(const DrillColumns& columns) {
    set_up_fixed("Drill, fence", columns.drill, columns.fence, 1);
    set_up_fixed("Mark, leg", columns.mark, columns.leg, 3);
    columns.distance.set_up(5);
    ImGui::TableSetupColumn("Work, meets", ImGuiTableColumnFlags_WidthStretch, 0.0F, 7);
}

// Its columns, in the order of the wide table. Drills sort by their diameter.
TableLine line_of(const model::DrillRow& row, const Derived& derived) {
    const auto& project = *derived.project;
    const std::string mark = mark_name(derived, row.mark);
    const std::string work(model::name_of(row.operation));
    return {row.drill + " " + model::length_text(project, row.gauge) + " " +
                mark_words(row, derived) + " " + row.leg + " " +
                model::length_text(project, row.from_datum) + " " + datum_side(row) + " " + work +
                " " + row.mates_with + " " + row.fastener,
            {row.diameter.mm(), row.gauge.mm(), mark, row.leg, row.from_datum.mm(), datum_side(row),
             work, row.mates_with}};
}

std::vector<TableLine> lines_of(const Derived& derived) {
    std::vector<TableLine> lines;
    for (const auto& row : derived.drills) lines.push_back(line_of(row, derived));
    return lines;
}

bool draw_line(const LineAt& at, const Derived& derived, bool narrow) {
    const auto& row = derived.drills[at.line];
    // Drill and fence are said again where they change, and at the top of what is seen.
    const auto* before = at.before ? &derived.drills[*at.before] : nullptr;
    const bool new_drill = before == nullptr || before->drill != row.drill;
    const bool new_fence = new_drill || before->setup != row.setup;
    const std::string name = "drill " + std::to_string(at.line + 1);
    const bool clicked = draw_line_start(name, new_drill ? row.drill : " ", at.is_marked);
    const ItemScope line(name);
    narrow ? draw_narrow_drill_line(row, derived, new_fence)
           : draw_drill_line(row, derived, new_fence);
    return clicked;
}

}  // namespace

void draw_drill_table(const Derived& derived,
                      const std::vector<Index>& chosen,
                      TableOrder& order,
                      Selection& selection) {
    draw_wrapped(
        "Heel against the fence, the leg flat on its outer face, the other leg standing "
        "along the fence. Distances run from the datum end, which lies at the hand given.",
        Type::small, colour::quiet);
    bring_up_to_date(order, worked_out_of(derived), [&] { return lines_of(derived); });
    const ItemScope items("drills");
    draw_search("Find", order);
    const DrillColumns& columns = kept_columns(order, [&] { return drill_columns(derived); });
    const bool narrow = is_narrow(columns.all(), 60.0F);
    const TableScope table(narrow ? "narrow drills" : "drills", narrow ? 4 : 8, sorted_table_flags);
    if (!table) return;
    narrow ? set_up_narrow(columns) : set_up(columns);
    draw_heads(order);
    draw_lines(order, selection,
               {[&](std::size_t line) {
                    const auto& row = derived.drills[line];
                    return is_chosen(chosen, derived, row.mark, row.hand);
                },
                [&](std::size_t line) {
                    const auto& row = derived.drills[line];
                    return selection_of(*derived.project, derived.resolved,
                                        pieces_of(derived, row.mark, row.hand));
                },
                [&](const LineAt& at) { return draw_line(at, derived, narrow); }});
}

}  // namespace editor
