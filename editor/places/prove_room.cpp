#include "editor/kit/widgets.h"
#include "editor/places/piece_words.h"
#include "editor/places/prove_sheets.h"
#include "editor/places/table_columns.h"

#include <algorithm>
#include <array>
#include <limits>
#include <string>
#include <utility>
#include <vector>

namespace editor {
namespace {

const std::vector<RoomRow>& rows_of(const ProveFacts& now, ProveState& state) {
    auto& memo = state.room_rows;
    const auto of = worked_out_of(now.derived);
    const double reach = now.facts == nullptr ? 0.0 : now.facts->reach_mm;
    if (memo.of == of && memo.reach_mm == reach) return memo.rows;
    const auto before = std::move(memo.rows);
    memo = {of, reach, {}};
    if (now.facts != nullptr) memo.rows = room_rows(now.derived, *now.facts, now.catalogue);
    keep_same_row(state.shown_row, before, memo.rows, [](const RoomRow& a, const RoomRow& b) {
        return a.frame == b.frame && a.other == b.other && a.is_frame == b.is_frame;
    });
    state.room.of.reset();
    return memo.rows;
}

std::string wanted_words(const RoomRow& row, const Derived& derived) {
    if (row.wanted <= 0.0) return "none";
    return model::distance_in_words(row.wanted, derived.project->shown);
}

std::string piece_names(const RoomRow& row, const Derived& derived) {
    std::string names;
    for (const auto piece : row.pieces)
        names += (names.empty() ? "" : " and ") + member_words(derived, piece);
    return names;
}

// What has no shape comes first, then what stands inside, then by what is clear.
double clear_key(const RoomRow& row) {
    if (!row.is_known) return -std::numeric_limits<double>::max();
    return row.clear ? *row.clear - row.depth : row.reach;
}

ImU32 colour_of(const RoomRow& row) {
    if (row.depth > 0.0) return colour::red;
    return !row.is_known || row.is_too_near() ? colour::amber : colour::ink;
}

TableLine line_of(const RoomRow& row, const Derived& derived) {
    return {row.frame + " " + row.other + " " + clearance_words(row, derived.project->shown) + " " +
                wanted_words(row, derived) + " " + piece_names(row, derived),
            {row.frame, row.other, clear_key(row), row.wanted}};
}

bool draw_row_of(const LineAt& at, const RoomRow& row, const Derived& derived) {
    const std::string name = "near " + std::to_string(at.line + 1);
    const auto& shown = derived.project->shown;
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    const bool clicked = draw_row(name, " ", at.is_marked, true).clicked;
    log_item(name, row.frame + " to " + row.other + ": " + clearance_words(row, shown));
    const auto pieces = piece_names(row, derived);
    if (!pieces.empty()) draw_hint("Nearest is " + pieces + ". Click to see where");
    ImGui::SameLine(0, 0);
    draw_text(text_to_fit(row.frame, Type::text, ImGui::GetContentRegionAvail().x));
    ImGui::TableNextColumn();
    draw_text(text_to_fit(row.other, Type::text, ImGui::GetContentRegionAvail().x));
    ImGui::TableNextColumn();
    draw_text_right(clearance_words(row, shown), colour_of(row));
    ImGui::TableNextColumn();
    draw_text_right(wanted_words(row, derived), colour::quiet);
    return clicked;
}

Selection chosen_by(const RoomRow& row, const Derived& derived) {
    if (row.is_frame) return choice_of(derived, row.pieces, {});
    return choice_of(derived, row.pieces, {{model::SubjectKind::obstacle, {}, row.other}});
}

// Whether something of it was chosen elsewhere.
bool is_about(const RoomRow& row,
              const Selection& selection,
              const std::vector<model::Index>& chosen) {
    if (!row.is_frame && has_subject(selection, model::SubjectKind::obstacle, row.other))
        return true;
    return std::ranges::any_of(row.pieces, [&](model::Index piece) {
        return std::ranges::find(chosen, piece) != chosen.end();
    });
}

void draw_table(const std::vector<RoomRow>& rows,
                const Derived& derived,
                ProveState& state,
                Selection& selection) {
    const auto chosen = selected_pieces(*derived.project, derived.resolved, selection);
    const TableScope table("room", 4, sorted_table_flags);
    if (!table) return;
    ColumnWidth clear{"Least clearance"};
    ColumnWidth wanted{"Wanted"};
    for (const auto& row : rows) {
        clear.add(clearance_words(row, derived.project->shown));
        wanted.add(wanted_words(row, derived));
    }
    ImGui::TableSetupColumn("Frame", ImGuiTableColumnFlags_WidthStretch, 1.0F, 1);
    ImGui::TableSetupColumn("From", ImGuiTableColumnFlags_WidthStretch, 1.0F, 2);
    clear.set_up(3);
    wanted.set_up(4);
    draw_heads(state.room);
    std::optional<std::size_t> clicked;
    draw_lines(state.room, selection,
               {[&](std::size_t line) {
                    return state.shown_row ? state.shown_row == line
                                           : is_about(rows[line], selection, chosen);
                },
                [&](std::size_t line) {
                    clicked = line;
                    return chosen_by(rows[line], derived);
                },
                [&](const LineAt& at) { return draw_row_of(at, rows[at.line], derived); }});
    if (clicked) state.shown_row = clicked;
}

}  // namespace

void draw_room_rows(const ProveFacts& now, ProveState& state, Selection& selection) {
    const auto& rows = rows_of(now, state);
    if (rows.empty()) {
        draw_wrapped(now.derived.project->frames.empty()
                         ? "There is no frame yet."
                         : "Nothing of the room is measured, and there is one frame alone: "
                           "nothing is there to keep clear of.",
                     Type::small, colour::quiet);
        log_item("no rows");
        return;
    }
    draw_wrapped(
        "The least clearance, with heads and tails of the fasteners. Click a line to see "
        "where it is.",
        Type::small, colour::quiet);
    bring_up_to_date(state.room, worked_out_of(now.derived), [&] {
        std::vector<TableLine> lines;
        for (const auto& row : rows) lines.push_back(line_of(row, now.derived));
        return lines;
    });
    draw_search("Find", state.room);
    draw_table(rows, now.derived, state, selection);
}

}  // namespace editor
