// Small drawings of where to hold the tape; lengths are known by the letters of their fields.
#pragma once

namespace editor {

// A wheel well from above and, below that, across the van. The length of that letter is drawn with
// weight. The well stands at the left or, mirrored, at the right. Takes `width` design pixels.
void draw_well_picture(float width, char active, bool is_right);

// A wall and the plumb line before it, across the van: a height, b to the wall, c to the other
// wall, d from wall to wall.
void draw_wall_picture(float width, char active, bool is_right);

}  // namespace editor
