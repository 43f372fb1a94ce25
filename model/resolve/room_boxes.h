// What of the room can be told as boxes, for parts that must not stand into a wall.
#pragma once

#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// Boxes, wheel wells (as the boxes that hold them) and walls (between each two heights, from the
// lesser of their insets outward by 1 m), in the axes of the frame. Of the second the dimensions
// are used. What cannot be worked out is passed over, since it has a finding of its own; so are
// cylinders and scans.
std::vector<Box> room_boxes(const Project& project,
                            const Resolved& resolved,
                            const ResolvedFrame& frame);

}  // namespace model
