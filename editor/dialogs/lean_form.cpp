#include "editor/dialogs/lean_form.h"

#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "model/room/lean_with_wall.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

bool is_wall(const model::Obstacle& obstacle) {
    return std::holds_alternative<model::WallProfile>(obstacle.shape);
}

engine::Result<Change> change_for(const LeanForm& form,
                                  const Derived& derived,
                                  const model::Catalogue& catalogue) {
    auto edits =
        model::lean_with_wall(*derived.project, catalogue, derived.resolved, form.frame, form.wall);
    if (!edits) return edits.error();
    return Change{.edits = std::move(edits).value(),
                  .label = "Lean " + form.frame + " with " + form.wall};
}

}  // namespace

bool can_lean(const model::Project& project) {
    return !project.frames.empty() && std::ranges::any_of(project.room, is_wall);
}

LeanForm new_lean_form(const Derived& derived) {
    LeanForm form;
    const auto& project = *derived.project;
    if (!project.frames.empty()) form.frame = project.frames.front().name;
    const auto first = std::ranges::find_if(project.room, is_wall);
    if (first != project.room.end()) form.wall = first->name;
    take_named_together(derived, form.frame, form.wall, is_wall);
    return form;
}

FormOutcome draw_lean_form(LeanForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue) {
    FormOutcome outcome;
    const DialogScope dialog("Lean", "Lean a frame with a wall", scaled(560),
                             DialogScope::Fields::scroll);
    if (!dialog) return outcome;
    draw_names("frame", derived.project->frames, form.frame, [](const auto&) { return true; });
    draw_names("with", derived.project->room, form.wall, is_wall);
    draw_wrapped(
        "The posts on the side that faces the wall lean in as far as it does over their height, "
        "rounded up to a mark of the tape; their foot stays. Rails and bays follow them. How far "
        "they lean becomes a dimension, which can be changed like any other.",
        Type::small, colour::quiet);
    const auto make_change = [&] { return change_for(form, derived, catalogue); };
    update_trial(form.trial, derived, catalogue, form.frame, {form.frame, form.wall}, make_change);
    draw_rule();
    draw_frame_trial(*form.trial);
    const auto answer =
        draw_form_answers({}, {.verb = "Lean", .can_put = form.trial->refusal.empty()});
    if (answer.puts) outcome.change = make_change().value();
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
