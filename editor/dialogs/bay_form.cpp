#include "editor/dialogs/bay_form.h"

#include "editor/dialogs/form_line.h"
#include "editor/dialogs/plane_choice.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/view/sketch_hand.h"
#include "editor/view/sketch_member.h"

#include <imgui.h>

#include <array>

namespace editor {
namespace {

const model::Frame* frame_of(const BayForm& form, const Derived& derived) {
    return by_name(derived.project->frames, form.frame);
}

PlaneGrid grid_of(const BayForm& form, const Derived& derived) {
    const auto* frame = frame_of(form, derived);
    if (frame == nullptr) return {};
    return plane_grid(derived, static_cast<std::size_t>(frame - derived.project->frames.data()));
}

std::string free_bay_name(const model::Frame& frame) {
    for (int n = 1;; ++n) {
        const std::string name = "bay " + std::to_string(n);
        if (by_name(frame.bays, name) == nullptr) return name;
    }
}

bool has_cell(const PlaneGrid& grid, const GridNode& least) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (least[k] + 1 >= grid.planes[k].size()) return false;
    }
    return true;
}

void take_free_cell(BayForm& form, const Derived& derived) {
    const auto* frame = frame_of(form, derived);
    if (frame == nullptr) return;
    const auto grid = grid_of(form, derived);
    const std::string name = free_bay_name(*frame);
    std::optional<GridCell> free;
    for (const auto& node : nodes_of(grid)) {
        if (!has_cell(grid, node) || free) continue;
        if (bay_at(*frame, grid, {node}) == nullptr) free = GridCell{node};
    }
    form.bay = {.name = name};
    if (free) form.bay = new_bay(grid, *free, name);
    if (free || nodes_of(grid).empty()) return;
    form.bay.x = {grid.planes[0].front().name, grid.planes[0].back().name};
    form.bay.y = {grid.planes[1].front().name, grid.planes[1].back().name};
    form.bay.z = {grid.planes[2].front().name, grid.planes[2].back().name};
}

std::optional<Change> tried_change(BayForm& form, const Derived& derived) {
    const auto* frame = frame_of(form, derived);
    if (frame == nullptr) return std::nullopt;
    form.trouble = reason_against_name(frame->bays, form.bay.name, {}, "a bay");
    if (!form.trouble.empty()) return std::nullopt;
    const model::Edit edit = model::PutBay{form.frame, form.bay, {}};
    form.trouble = reason_against_edit(derived, edit);
    if (!form.trouble.empty()) return std::nullopt;
    return change_of(edit);
}

bool is_choosing() {
    constexpr std::array lists{"frame list",          "from the left list", "to the right list",
                               "from the front list", "to the back list",   "from below list",
                               "up to list"};
    for (const auto* list : lists) {
        if (ImGui::IsPopupOpen(list)) return true;
    }
    return false;
}

}  // namespace

BayForm new_bay_form(const Derived& derived, const SketchState& sketch) {
    BayForm form;
    const auto frame = sketched_frame(derived, sketch);
    if (!frame) return form;
    form.frame = derived.project->frames[*frame].name;
    take_free_cell(form, derived);
    return form;
}

FormOutcome draw_bay_form(BayForm& form, const Derived& derived) {
    FormOutcome outcome;
    const DialogScope dialog("Bay", "New bay", scaled(520));
    if (!dialog) return outcome;
    const bool is_in_list = is_choosing();
    if (choose_name("frame", derived.project->frames, form.frame)) take_free_cell(form, derived);
    const auto grid = grid_of(form, derived);
    draw_form_line("name", form.bay.name, "bay 1", form.is_fresh);
    choose_name("from the left", grid.planes[0], form.bay.x[0]);
    choose_name("to the right", grid.planes[0], form.bay.x[1]);
    choose_name("from the front", grid.planes[1], form.bay.y[0]);
    choose_name("to the back", grid.planes[1], form.bay.y[1]);
    choose_name("from below", grid.planes[2], form.bay.z[0]);
    choose_name("up to", grid.planes[2], form.bay.z[1]);
    draw_form_line("note", form.bay.note, "what it is for");
    const auto answer = draw_form_answers(
        form.trouble,
        {.verb = "Add", .can_put = !form.bay.name.empty(), .is_choosing = is_in_list});
    if (answer.puts) outcome.change = tried_change(form, derived);
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
