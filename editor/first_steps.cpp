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

bool has_well(const Derived& now) {
    const auto& room = now.project->room;
    return std::any_of(room.begin(), room.end(), is_well);
}

// There is a wheel well, and nothing stands in it or too near to it.
bool clears_the_well(const Derived& now) {
    if (!has_well(now) || now.project->frames.empty()) return false;
    return std::none_of(now.findings.begin(), now.findings.end(), [&](const model::Finding& it) {
        return is_of_fit(it) && names_well(now, it);
    });
}

}  // namespace

std::array<FirstStep, 3> first_steps(const Derived& now, bool has_exported) {
    const bool has_frame = !now.project->frames.empty();
    const bool is_measured = has_well(now);
    return {
        {{"sketch", "Sketch a frame",
          "Give its outside sizes; then pull the strips of tape until it is as you want it.",
          "frame.box", has_frame},
         {"adjust", "Fit it to the wheel well",
          is_measured ? "Step the frame over the wheel well: what it takes up is left out."
                      : "Measure the wheel well by the tape; then step the frame over it.",
          is_measured && has_frame ? "frame.step_over" : "room.well_by_tape", clears_the_well(now)},
         {"export", "Export the drilling schedule",
          "Choose a folder: cut list, drilling schedule and the others are written there.",
          "project.export", has_frame && has_exported}}};
}

}  // namespace editor
