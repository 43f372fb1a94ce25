#include "editor/first_steps.h"

#include <algorithm>
#include <string>
#include <variant>

namespace editor {
namespace {

bool is_well(const model::Obstacle& obstacle) {
    return std::holds_alternative<model::WheelWell>(obstacle.shape);
}

bool is_of_fit(const model::Finding& finding) {
    return finding.code == "inside_obstacle" || finding.code == "clearance";
}

bool has_well(const Derived& now) {
    const auto& room = now.project->room;
    return std::any_of(room.begin(), room.end(), is_well);
}

// Nothing of the frames stands in anything of the room, or too near to it.
bool is_clear(const Derived& now) {
    return std::none_of(now.findings.begin(), now.findings.end(), is_of_fit);
}

bool names_well(const Derived& now, const model::Finding& finding) {
    return std::any_of(
        finding.concerns.begin(), finding.concerns.end(), [&](const model::Subject& subject) {
            if (subject.kind != model::SubjectKind::obstacle) return false;
            const auto& room = now.project->room;
            return std::any_of(room.begin(), room.end(), [&](const model::Obstacle& it) {
                return it.name == subject.name && is_well(it);
            });
        });
}

bool clears_the_well(const Derived& now) {
    return std::none_of(now.findings.begin(), now.findings.end(), [&](const model::Finding& it) {
        return is_of_fit(it) && names_well(now, it);
    });
}

FirstStep step_over_well(const Derived& now, bool has_frame) {
    return {"adjust", "Fit it to the wheel well",
            "Step the frame over the wheel well: what it takes up is left out.",
            has_frame ? "frame.step_over" : "frame.box", has_frame && clears_the_well(now)};
}

// Other things stand in the room, or nothing yet: then a size that was set is a fit as well.
FirstStep fit_to_room(const Derived& now, bool has_frame, bool has_adjusted) {
    if (now.project->room.empty()) {
        return {
            "adjust", "Fit it to the van",
            "Put in what it must clear - a wall, a wheel well, a box - under Measure; or pull a "
            "strip of tape until its size is right.",
            "place.measure", has_frame && has_adjusted};
    }
    return {"adjust", "Fit it to the room",
            "Pull the strips of tape until it stands clear: the cards under Lay out say what is in "
            "its way.",
            has_frame ? "edit.next_finding" : "frame.box", has_frame && is_clear(now)};
}

}  // namespace

std::array<FirstStep, 3> first_steps(const Derived& now, StepsTaken taken) {
    const bool has_frame = !now.project->frames.empty();
    return {{{"sketch", "Sketch a frame",
              "Give its outside sizes; then pull the strips of tape until it is as you want it.",
              "frame.box", has_frame},
             has_well(now) ? step_over_well(now, has_frame)
                           : fit_to_room(now, has_frame, taken.has_adjusted),
             {"export", "Export the drilling schedule",
              "Choose a folder: cut list, drilling schedule and the others are written there.",
              "project.export", has_frame && taken.has_exported}}};
}

}  // namespace editor
