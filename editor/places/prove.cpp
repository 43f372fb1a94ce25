#include "editor/places/prove.h"

#include "editor/check_words.h"
#include "editor/kit/widgets.h"
#include "editor/places/choice_row.h"
#include "editor/places/prove_sheets.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

namespace editor {
namespace {

constexpr const char* caution =
    "Strength under braking is not checked, nor what shelves, joints and fixings to the van bear. "
    "What is checked stands under Checks: rest the pointer on a line for what exactly.";

std::string left_out_words(const Derived& derived) {
    const int count = count_of(derived, model::CheckKind::stated).errors;
    if (count == 0) return {};
    return std::to_string(count) + (count == 1 ? " thing" : " things") +
           " cannot be made out of what is stated and may be left out: of that nothing is checked.";
}

void draw_choices(const Derived& derived, ProveState& state) {
    const int open = derived.summary.open();
    const auto sheet = draw_choice_row<ProveSheet>(
        state.sheet, {{ProveSheet::checks, "Checks",
                       open > 0 ? "Checks \xC2\xB7 " + std::to_string(open) : "Checks"},
                      {ProveSheet::room, "Room", "Room"},
                      {ProveSheet::square, "Square", "Square"},
                      {ProveSheet::as_built, "As built", "As built"}});
    if (sheet != state.sheet) state.shown_row.reset();
    state.sheet = sheet;
}

std::optional<Change> draw_sheet(const ProveFacts& now,
                                 ProveState& state,
                                 Selection& selection,
                                 FindingHands hands) {
    switch (state.sheet) {
        case ProveSheet::checks:
            return draw_checks(now.derived, state, selection, hands);
        case ProveSheet::room:
            draw_room_rows(now, state, selection);
            break;
        case ProveSheet::square:
            draw_square(now.derived, state, selection);
            break;
        case ProveSheet::as_built:
            draw_as_built(now.derived, state, selection);
            break;
    }
    return std::nullopt;
}

}  // namespace

std::string_view name_of(ProveSheet sheet) {
    constexpr std::array<std::string_view, 4> names{"checks", "room", "square", "as built"};
    return names[static_cast<std::size_t>(sheet)];
}

Selection choice_of(const Derived& derived,
                    const std::vector<model::Index>& pieces,
                    std::vector<model::Subject> subjects) {
    auto selection = selection_of(*derived.project, derived.resolved, pieces);
    selection.subjects = std::move(subjects);
    return selection;
}

std::vector<model::Index> pieces_of_frame(const Derived& derived, std::string_view frame) {
    std::vector<model::Index> pieces;
    const auto& frames = derived.project->frames;
    for (model::Index i = 0; i < derived.resolved.pieces.size(); ++i) {
        if (frames[derived.resolved.pieces[i].frame].name == frame) pieces.push_back(i);
    }
    return pieces;
}

std::optional<Change> draw_prove(const Area& area,
                                 const ProveFacts& now,
                                 ProveState& state,
                                 Selection& selection,
                                 FindingHands hands) {
    const PanelScope panel("Prove", area,
                           ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    // Something else was chosen since: the view measures no more what the row said.
    if (const auto* table = state.shown(); table != nullptr && !(table->seen == selection)) {
        state.shown_row.reset();
    }
    draw_choices(now.derived, state);
    const float width = ImGui::GetContentRegionAvail().x;
    const std::string left_out = left_out_words(now.derived);
    const float spacing = ImGui::GetStyle().ItemSpacing.y;
    float below = size_of_text(caution, Type::small, width).y + scaled(8) + 3 * spacing;
    if (!left_out.empty()) below += size_of_text(left_out, Type::small, width).y + spacing;
    std::optional<Change> change;
    {
        const ChildScope sheet(name_of(state.sheet).data(), {0, -below});
        change = draw_sheet(now, state, selection, hands);
    }
    draw_rule();
    if (!left_out.empty()) {
        draw_wrapped(left_out, Type::small, colour::amber);
        log_item("left out", left_out);
    }
    draw_wrapped(caution, Type::small, colour::quiet);
    log_item("not checked", caution);
    return change;
}

std::vector<MeasuredLine> lines_to_show(const ProveState& state, const Derived& derived) {
    if (!state.shown_row) return {};
    const auto& rows = state.room_rows.rows;
    if (state.sheet == ProveSheet::room && *state.shown_row < rows.size()) {
        const auto& row = rows[*state.shown_row];
        if (row.clear) return {line_of(row, derived.project->shown)};
    }
    const auto& faces = state.faces.rows;
    if (state.sheet == ProveSheet::square && *state.shown_row < faces.size()) {
        const auto lines = lines_of(faces[*state.shown_row], derived);
        return {lines.begin(), lines.end()};
    }
    return {};
}

}  // namespace editor
