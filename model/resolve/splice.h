// Splices: a piece longer than any bar of its stock is made of lengths in line, each butt with a
// backing fastened to both sides of it.
#pragma once

#include "model/resolve/bar_room.h"
#include "model/resolve/part_maker.h"

#include <vector>

namespace model {

// Parts the pieces of members that no bar is long enough for, and puts the backings in. Done when
// all other parts of the frame are there; nothing is touched where every piece fits a bar. Each
// splice is a note, and each that cannot be made a warning.
void splice_long_pieces(const PartRoom& room,
                        BarRoom& bars,
                        FrameSkeleton& skeleton,
                        const Frame& frame,
                        std::vector<Outline>& outlines,
                        std::vector<Lap>& laps,
                        std::vector<Finding>& findings);

}  // namespace model
