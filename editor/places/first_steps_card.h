// The card of first steps, at the foot of a panel until it is dismissed.
#pragma once

#include "editor/first_steps.h"
#include "editor/kit/scopes.h"

#include <array>
#include <string_view>

namespace editor {

struct StepsOutcome {
    std::string_view command;  // to run; empty: none
    bool is_dismissed = false;
};

StepsOutcome draw_first_steps(const Area& panel, const std::array<FirstStep, 3>& steps);

}  // namespace editor
