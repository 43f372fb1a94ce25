// The three strokes by which a newcomer comes from nothing to a drilling schedule, and which of
// them are done in the project that is open.
#pragma once

#include "editor/derived.h"

#include <array>
#include <string_view>

namespace editor {

struct FirstStep {
    std::string_view name;     // stable
    std::string_view title;    // "Sketch a frame"
    std::string_view how;      // what to click
    std::string_view command;  // what its button runs
    bool is_done = false;
};

// What was done since the project was opened, and is not to be seen in it.
struct StepsTaken {
    bool has_adjusted = false;  // a size
    bool has_exported = false;
};

std::array<FirstStep, 3> first_steps(const Derived& now, StepsTaken taken);

}  // namespace editor
