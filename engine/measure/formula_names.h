// The names inside a formula, and what may be one.
#pragma once

#include "engine/measure/text_scan.h"

#include <optional>
#include <string_view>

namespace engine {

enum class Function { least, most, size, nearest_step, step_below, step_above, choice };

std::optional<Function> function_called(std::string_view name);

// Takes the longest name from here: letters, digits and `_`, words parted by single spaces.
// Requires a letter next.
std::string_view take_name(TextScan& scan);

// The next name that a formula refers to, from where the scan stands; no value when there is none
// left. Passes over whatever cannot be read.
std::optional<std::string_view> next_name(TextScan& scan);

}  // namespace engine
