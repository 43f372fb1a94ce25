// Errors in a maker's words: columns of a typed text are for programmers.
#pragma once

#include "engine/result.h"

#include <string>
#include <string_view>

namespace editor {

// What is wrong with a typed text, and where in it: "behind `24 in + `: a number is needed here".
// Where the fault is at the start, the message alone says enough. Other places stay as they are.
std::string error_words(const engine::Error& error, std::string_view typed);

}  // namespace editor
