// Make: what to cut and what to drill, in the order of the work.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/selection.h"

namespace editor {

enum class ShopTable { cuts, drills };

// Clicking a line selects its pieces.
void draw_make(const Area& area, const Derived& derived, ShopTable& table, Selection& selection);

}  // namespace editor
