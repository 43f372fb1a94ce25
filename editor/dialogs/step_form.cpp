#include "editor/dialogs/step_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/form_line.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/room/fit_step.h"

#include <algorithm>

namespace editor {
namespace {

bool has_faces(const model::Obstacle& obstacle) {
    return std::holds_alternative<model::BoxObstacle>(obstacle.shape) ||
           std::holds_alternative<model::WheelWell>(obstacle.shape) ||
           std::holds_alternative<model::CylinderObstacle>(obstacle.shape);
}

model::StepOver edit_of(const StepForm& form) {
    return {.frame = form.frame,
            .obstacle = form.obstacle,
            .clearance = form.clearance,
            .apart = form.apart,
            .standing = form.heads};
}

// A length that is worked out unless one is typed, and what it is.
void draw_length_or(const char* name,
                    std::string& text,
                    const std::string& worked_out,
                    const char* what) {
    draw_short_line(name, text, worked_out);
    ImGui::SameLine();
    draw_text(what, Type::small, colour::quiet);
}

std::vector<std::string> asked_by(const StepForm& form) {
    return {form.frame, form.obstacle, form.clearance, form.heads, form.apart};
}

}  // namespace

bool can_step_over(const model::Project& project) {
    return !project.frames.empty() && std::ranges::any_of(project.room, has_faces);
}

StepForm new_step_form(const Derived& derived) {
    StepForm form;
    const auto& project = *derived.project;
    if (!project.frames.empty()) form.frame = project.frames.front().name;
    const auto first = std::ranges::find_if(project.room, has_faces);
    if (first != project.room.end()) form.obstacle = first->name;
    take_named_together(derived, form.frame, form.obstacle, has_faces);
    return form;
}

FormOutcome draw_step_form(StepForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue) {
    FormOutcome outcome;
    const DialogScope dialog("Step", "Step a frame over an obstacle", scaled(560),
                             DialogScope::Fields::scroll);
    if (!dialog) return outcome;
    draw_names("frame", derived.project->frames, form.frame, [](const auto&) { return true; });
    draw_names("over", derived.project->room, form.obstacle, has_faces);
    draw_short_line("clearance", form.clearance, "its own", form.is_fresh);
    const auto heads = form.trial ? form.edit.standing : std::string();
    draw_length_or("heads", form.heads, heads.empty() ? "no more" : heads,
                   "kept beyond the clearance for heads and tails");
    draw_length_or("apart", form.apart, "as legs fit", "least distance of planes with members");
    draw_wrapped(
        "Planes come in where it begins and ends, the bays that it takes up go, and the "
        "outline of what remains is framed. The planes stand on its measures: when it "
        "moves, the step moves.",
        Type::small, colour::quiet);
    update_trial(form.trial, derived, catalogue, form.frame, asked_by(form), [&] {
        form.edit = model::fitted_step(*derived.project, catalogue, edit_of(form));
        return engine::Result<Change>(change_of(form.edit));
    });
    draw_rule();
    draw_frame_trial(*form.trial);
    const auto answer =
        draw_form_answers({}, {.verb = "Step over", .can_put = form.trial->refusal.empty()});
    if (answer.puts) outcome.change = change_of(form.edit);
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
