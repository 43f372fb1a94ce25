// The bar along the top: the project, its menus, the places of the job, and undo, redo, export.
#pragma once

#include "editor/desk.h"
#include "editor/kit/scopes.h"

#include <string_view>

namespace editor {

// Gives the id of the command that was asked for; empty when none was.
std::string_view draw_top_bar(const Area& area, const Desk& desk, const Derived& derived);

}  // namespace editor
