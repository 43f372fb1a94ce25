// A bar with the pieces that are cut from it, in order.
#pragma once

#include "editor/derived.h"

#include <imgui.h>

#include <cstddef>
#include <string>
#include <vector>

namespace editor {

// The rows of one bar: [first, first + count) in Derived::bars.
struct BarRun {
    std::size_t first = 0;
    std::size_t count = 0;
};

std::vector<BarRun> bar_runs(const Derived& derived);

// "3 x 16 ft + 1 x 20 ft", longest first; "no bar" where there is none.
std::string bars_text(const Derived& derived, const std::string& section = {});

// Pieces drawn to scale of `longest`, the offcut hatched.
void draw_bar(ImDrawList& on,
              ImVec2 at,
              ImVec2 size,
              const Derived& derived,
              const BarRun& bar,
              engine::Length longest);

}  // namespace editor
