// Into what the time from an input to the finished picture goes: each stage by itself, done by the
// functions that the window uses.
#pragma once

#include "tests/bench/bare_draw.h"
#include "tests/bench/offscreen_window.h"
#include "tests/bench/spent_time.h"

namespace tests {

struct WindowStages {
    Spent resolve;            // with the room's findings
    Spent follows;            // all that follows from the project, resolve in it
    Spent scene;              // pieces and fasteners as triangles and lines
    Spent upload;             // of those to OpenGL
    Spent panels;             // one frame of Dear ImGui
    SpentInTurn scene_drawn;  // in turn with the bare draw
    Spent panels_drawn;
};

// The bare draw is of the view's size.
WindowStages window_stages(OffscreenWindow& window, BareDraw& bare);

}  // namespace tests
