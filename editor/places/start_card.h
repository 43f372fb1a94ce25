// What to begin with, over an empty view.
#pragma once

#include "editor/kit/scopes.h"

#include <string_view>

namespace editor {

// Gives the id of the command that was asked for; empty when none was.
std::string_view draw_start_card(const Area& view);

}  // namespace editor
