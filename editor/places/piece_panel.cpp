#include "editor/places/piece_panel.h"

#include "editor/kit/term.h"
#include "editor/kit/widgets.h"
#include "editor/places/cautions.h"
#include "editor/places/piece_words.h"
#include "editor/places/section_choice.h"
#include "editor/places/table_columns.h"
#include "editor/turned_members.h"
#include "model/schedule/tables.h"

#include <algorithm>

namespace editor {
namespace {

using model::Index;

void draw_nothing_chosen(const Area& area) {
    const PanelScope panel("Piece", area);
    draw_text("No piece chosen", Type::strong);
    draw_wrapped(
        "Click a piece in the view, or a row of the cut list: it is laid flat here with "
        "its holes.",
        Type::text, colour::quiet);
}

std::string alike_words(const Derived& derived, const model::Piece& piece) {
    if (piece.mark >= derived.resolved.marks.size()) return "";
    const auto& mark = derived.resolved.marks[piece.mark];
    std::string words =
        std::to_string(mark.as_drawn) + (mark.opposite > 0 ? " as drawn, " : " of these");
    if (mark.opposite > 0) words += std::to_string(mark.opposite) + " of opposite hand";
    return words;
}

void draw_head(const Derived& derived, Index piece) {
    const auto& it = derived.resolved.pieces[piece];
    draw_text(mark_text(derived, piece), Type::title);
    ImGui::SameLine(0, scaled(10));
    ImGui::SetCursorPosY(ImGui::GetCursorPosY() + scaled(3));
    const auto& frame = derived.project->frames[it.frame].name;
    draw_wrapped(member_words(derived, piece) + ", " + frame);
    draw_text(alike_words(derived, it), Type::small, colour::quiet);
    if (it.hand == model::Hand::opposite) {
        draw_term("this one is of opposite hand", Type::small, colour::amber);
    }
}

// The members of the chosen pieces that lie in the same frame as the first one.
std::vector<std::string> chosen_members(const Selection& selection) {
    std::vector<std::string> members;
    for (const auto& name : selection.pieces) {
        if (name.frame != selection.pieces.front().frame || name.member.empty()) continue;
        if (std::find(members.begin(), members.end(), name.member) == members.end()) {
            members.push_back(name.member);
        }
    }
    return members;
}

std::optional<Change> draw_stock(const Derived& derived,
                                 const model::Catalogue& catalogue,
                                 const model::Piece& piece,
                                 const Selection& selection,
                                 SectionTyping& filter) {
    if (piece.section >= catalogue.sections.size()) return std::nullopt;
    const auto members = chosen_members(selection);
    if (members.empty()) return std::nullopt;
    const std::string current = catalogue.sections[piece.section].id;
    const auto section = draw_section_choice("stock of the chosen", current, catalogue, filter,
                                             ImGui::GetContentRegionAvail().x);
    if (members.size() > 1) {
        draw_text("for the " + std::to_string(members.size()) + " chosen members", Type::small,
                  colour::quiet);
    }
    if (draw_button("Turn", {.text = "Turn the bar over", .weight = Weight::link})) {
        return turn_change(*derived.project, selection.pieces);
    }
    draw_hint("What lay on its first plane comes onto the second: T");
    if (!section || *section == current) return std::nullopt;
    return section_change(derived, catalogue, selection.pieces.front().frame, members, *section);
}

const model::CutRow* cut_row(const Derived& derived, const model::Piece& piece) {
    const auto& rows = derived.cuts;
    const auto at = std::find_if(rows.begin(), rows.end(), [&](const model::CutRow& row) {
        return row.mark == piece.mark && row.hand == piece.hand;
    });
    return at == rows.end() ? nullptr : &*at;
}

// What a part is cut from, where no choice is offered; and what the saw must do at its ends.
void draw_cutting(const Derived& derived, const model::Piece& piece) {
    const auto* row = cut_row(derived, piece);
    if (row == nullptr) return;
    if (piece.member == model::no_index) {
        draw_wrapped(row->section + (row->alloy.empty() ? "" : ", " + row->alloy));
        log_item("cut from", row->section);
    }
    if (row->end_a != "square") {
        draw_wrapped("datum end: " + row->end_a, Type::small, colour::amber);
        log_item("datum end", row->end_a);
    }
    if (row->end_b != "square") {
        draw_wrapped("far end: " + row->end_b, Type::small, colour::amber);
        log_item("far end", row->end_b);
    }
}

// The schedule's rows of this piece, with the piece's own hole for each.
struct HoleRow {
    const model::DrillRow* row = nullptr;
    Index hole = 0;
};

std::vector<HoleRow> hole_rows(const Derived& derived, const model::Piece& piece) {
    std::vector<HoleRow> rows;
    for (const auto& row : derived.drills) {
        if (row.mark != piece.mark || row.hand != piece.hand) continue;
        const auto pattern = derived.resolved.holes[row.pattern_hole].piece;
        const Index offset = row.pattern_hole - derived.resolved.pieces[pattern].first_hole;
        rows.push_back({&row, piece.first_hole + offset});
    }
    return rows;
}

void draw_hole_row(const HoleRow& it,
                   const Derived& derived,
                   bool shows_fence,
                   std::optional<Index> marked_hole,
                   std::optional<Index>& now_hovered) {
    const auto& row = *it.row;
    const auto& project = *derived.project;
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const IdScope id(static_cast<int>(it.hole));
    const bool is_hot = marked_hole == it.hole;
    const auto click = draw_row("hole " + std::to_string(row.hole), " ", is_hot, true);
    if (click.hovered) now_hovered = it.hole;
    ImGui::SameLine(0, 0);
    draw_text(shows_fence ? model::length_text(project, row.gauge) : " ", Type::strong);
    ImGui::TableNextColumn();
    draw_text(row.leg, colour::quiet);
    ImGui::TableNextColumn();
    draw_text_right(model::length_text(project, row.from_datum));
    ImGui::TableNextColumn();
    draw_text(row.drill);
    if (row.operation != model::HoleOperation::drill) {
        draw_text(model::name_of(row.operation), Type::small, colour::amber);
        log_item("work " + std::to_string(row.hole), model::name_of(row.operation));
    }
    ImGui::TableNextColumn();
    draw_wrapped(row.mates_with, Type::text, colour::quiet);
    log_item("meets " + std::to_string(row.hole), row.mates_with);
}

// As wide as what they hold, so that what a hole meets has the rest.
void set_up_columns(const std::vector<HoleRow>& rows, const model::Project& project) {
    ColumnWidth fence("Fence");
    ColumnWidth leg("Leg");
    ColumnWidth distance("From datum");
    ColumnWidth drill("Drill");
    for (const auto& it : rows) {
        fence.add(model::length_text(project, it.row->gauge), Type::strong);
        leg.add(it.row->leg);
        distance.add(model::length_text(project, it.row->from_datum));
        drill.add(it.row->drill);
        if (it.row->operation == model::HoleOperation::drill) continue;
        drill.add(model::name_of(it.row->operation), Type::small);
    }
    for (const auto* column : {&fence, &leg, &distance, &drill}) column->set_up();
    ImGui::TableSetupColumn("Meets", ImGuiTableColumnFlags_WidthStretch);
}

void draw_hole_table(const Derived& derived,
                     const model::Piece& piece,
                     std::optional<Index> marked_hole,
                     std::optional<Index>& now_hovered) {
    const auto rows = hole_rows(derived, piece);
    if (rows.empty()) {
        draw_text("No holes in it", colour::quiet);
        return;
    }
    const ItemScope items("holes");
    const StyleScope cells(ImGuiStyleVar_CellPadding, scaled(3, 2));
    const TableScope table("holes", 5, ImGuiTableFlags_BordersInnerH);
    if (!table) return;
    set_up_columns(rows, *derived.project);
    {
        const FontScope small(Type::small);
        const ColourScope quiet(ImGuiCol_Text, colour::quiet);
        draw_term_headings();
    }
    const model::DrillRow* before = nullptr;
    for (const auto& row : rows) {
        const bool new_fence =
            before == nullptr || before->gauge != row.row->gauge || before->drill != row.row->drill;
        draw_hole_row(row, derived, new_fence, marked_hole, now_hovered);
        before = row.row;
    }
}

}  // namespace

std::optional<Change> draw_piece_panel(const Area& area,
                                       const Derived& derived,
                                       const model::Catalogue& catalogue,
                                       PieceHands hands) {
    const auto pieces = selected_pieces(*derived.project, derived.resolved, hands.selection);
    if (pieces.empty()) {
        draw_nothing_chosen(area);
        return std::nullopt;
    }
    const Index piece = pieces.front();
    const auto& it = derived.resolved.pieces[piece];
    const PanelScope panel("Piece", area);
    draw_head(derived, piece);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const Area blue{at.x, at.y, width, std::clamp(area.height * 0.55F, scaled(240), scaled(430))};
    ImGui::GetWindowDrawList()->AddRectFilled(at, {at.x + width, at.y + blue.height},
                                              colour::dye_ground, scaled(3));
    auto now_hovered = draw_flat_piece(blue, derived, catalogue, piece, hands.hovered_hole);
    const auto marked = now_hovered ? now_hovered : hands.hovered_hole;
    ImGui::Dummy({width, blue.height + scaled(2)});
    auto change = draw_stock(derived, catalogue, it, hands.selection, hands.stock_filter);
    draw_cutting(derived, it);
    draw_hole_table(derived, it, marked, now_hovered);
    draw_caution(Work::drilling);
    hands.hovered_hole = now_hovered;
    return change;
}

}  // namespace editor
