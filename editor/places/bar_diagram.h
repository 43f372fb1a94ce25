// A bar with the pieces that are cut from it, in order.
#pragma once

#include "editor/derived.h"
#include "editor/places/bar_text.h"

#include <imgui.h>

namespace editor {

// Pieces drawn to scale of `longest`, the offcut hatched. The bar's length stands at its end, with
// `behind` behind it.
void draw_bar(ImDrawList& on,
              ImVec2 at,
              ImVec2 size,
              const Derived& derived,
              const BarRun& bar,
              engine::Length longest,
              const std::string& behind = {});

// The same of a bar at the saw, in all the width that is given: what has been cut is dyed, what was
// spoiled is crossed out.
void draw_saw_bar(ImDrawList& on, ImVec2 at, ImVec2 size, const model::SawBar& bar);

}  // namespace editor
