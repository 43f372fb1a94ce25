// What a user does in the window, timed from the input to the finished picture.
#pragma once

#include "model/project/project.h"

#include "tests/bench/bare_draw.h"
#include "tests/bench/offscreen_window.h"
#include "tests/bench/spent_time.h"

namespace tests {

// The back of every frame stands on one dimension, "depth", 16 in, which lies where it lay.
model::Project with_typed_depth(model::Project project);

// The view as it is when a project is opened.
void show_all(OffscreenWindow& window);

// The mouse is moved with its button down, and the view turns; in turn with bare draws.
struct Turned {
    SpentInTurn to_picture;
    SpentInTurn five;  // pictures, none of which is waited for before the next is begun
};
Turned turn_view(OffscreenWindow& window, BareDraw& bare);

// The mouse is moved from bar to bar, each of which is shown as such.
Spent point_at_bars(OffscreenWindow& window);

// Another depth, from the key that ends the typing: every bar across and all that follows; in turn
// with bare draws.
SpentInTurn type_depth(OffscreenWindow& window, BareDraw& bare);

}  // namespace tests
