#include "editor/dialogs/plane_form.h"

#include "editor/dialogs/form_line.h"
#include "editor/dialogs/plane_choice.h"
#include "editor/dimension_values.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/view/sketch_hand.h"
#include "editor/view/sketch_trial.h"

#include <imgui.h>

namespace editor {
namespace {

const model::Frame* frame_of(const PlaneForm& form, const Derived& derived) {
    return by_name(derived.project->frames, form.frame);
}

// In the middle of the widest space between two planes of the axis.
model::Formula place_in_widest(const PlaneForm& form, const Derived& derived) {
    const auto* frame = frame_of(form, derived);
    if (frame == nullptr) return "0";
    const auto grid =
        plane_grid(derived, static_cast<std::size_t>(frame - derived.project->frames.data()));
    const auto& planes = grid.across(form.plane.axis);
    model::Nm widest = 0;
    model::Nm at = 0;
    for (std::size_t i = 0; i + 1 < planes.size(); ++i) {
        const model::Nm space = planes[i + 1].at - planes[i].at;
        if (space <= widest) continue;
        widest = space;
        at = (planes[i].at + planes[i + 1].at) / 2;
    }
    const auto& shown = derived.project->shown;
    at = snapped(at, {}, 0, shown).at;
    return formula_of({.kind = engine::QuantityKind::length, .length = engine::Length::from_nm(at)},
                      shown);
}

void begin_on_axis(PlaneForm& form, const Derived& derived) {
    const auto* frame = frame_of(form, derived);
    if (frame == nullptr) return;
    form.plane.name = free_plane_name(*frame, form.plane.axis);
    form.plane.position = place_in_widest(form, derived);
}

std::optional<Change> tried_change(PlaneForm& form, const Derived& derived) {
    form.trouble.clear();
    const auto* frame = frame_of(form, derived);
    if (frame == nullptr) return std::nullopt;
    form.trouble = reason_against_name(frame->planes, form.plane.name, {}, "a plane");
    if (!form.trouble.empty()) return std::nullopt;
    if (const auto value = tried_length(derived, form.plane.position); !value) {
        form.trouble = engine::to_text(value.error());
        return std::nullopt;
    }
    auto change = new_plane_change(*derived.project, *frame, form.plane);
    const auto next = project_after(*derived.project, change);
    if (next) return change;
    form.trouble = engine::to_text(next.error());
    return std::nullopt;
}

}  // namespace

PlaneForm new_plane_form(const Derived& derived, const SketchState& sketch) {
    PlaneForm form;
    const auto frame = sketched_frame(derived, sketch);
    if (!frame) return form;
    form.frame = derived.project->frames[*frame].name;
    begin_on_axis(form, derived);
    return form;
}

FormOutcome draw_plane_form(PlaneForm& form, const Derived& derived) {
    FormOutcome outcome;
    const DialogScope dialog("Plane", "New layout plane", scaled(520));
    if (!dialog) return outcome;
    const bool is_in_list = ImGui::IsPopupOpen("frame list") || ImGui::IsPopupOpen("measured list");
    if (choose_name("frame", derived.project->frames, form.frame)) begin_on_axis(form, derived);
    const auto axis = draw_choice_button(
        "measured", "measured", {{"from left to right"}, {"from front to back"}, {"upward"}},
        model::index_of(form.plane.axis));
    if (axis) {
        form.plane.axis = static_cast<model::Axis>(*axis);
        begin_on_axis(form, derived);
    }
    draw_form_line("name", form.plane.name, "divider 1");
    draw_short_line("place", form.plane.position, "12 in", form.is_fresh);
    if (const auto value = tried_length(derived, form.plane.position)) {
        ImGui::SameLine();
        draw_text("= " + quantity_text(*value, derived.project->shown) + " from the frame's corner",
                  Type::small, colour::quiet);
    }
    const auto answer = draw_form_answers(
        form.trouble,
        {.verb = "Add", .can_put = !form.plane.name.empty(), .is_choosing = is_in_list});
    if (answer.puts) outcome.change = tried_change(form, derived);
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
