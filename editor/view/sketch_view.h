// Laying out in the view: takes the mouse for the hand that is at work, and shows the grid of
// planes and what would come of a click.
#pragma once

#include "editor/kit/scopes.h"
#include "editor/view/sketch_hand.h"

#include <string_view>

namespace editor {

struct SketchMouse {
    std::optional<Change> change;
    bool has_pointer = false;  // the view is neither turned nor chosen from under it
};

// Right behind the button that is the picture.
SketchMouse use_sketch_mouse(const SketchDesk& desk, glm::dvec2 pixel, double pixel_scale);

// Under the tags.
void draw_sketch_grid(const Area& area, const SketchDesk& desk, float pixel_scale);

// Beside the pointer.
void draw_sketch_words(const SketchDesk& desk);

// A row of hands at the top of the view; the desk's state tells what it covers.
void draw_sketch_bar(const Area& area, const SketchDesk& desk);

// What the hand does, for the foot of the view; empty: there is none at work.
std::string_view words_of_hand(SketchHand hand);

}  // namespace editor
