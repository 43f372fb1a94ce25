// Keeps shims out of the way of parts.
#pragma once

#include "model/resolve/lap.h"

#include <vector>

namespace model {

// Cuts back each lap across a gap by the parts of joints that lie in the gap, where its shim would
// go; a lap of which nothing is left is taken out. Members in the gap are seen to by laps_of.
void keep_shims_clear(const FrameSkeleton& skeleton, std::vector<Lap>& laps);

// Between the two walls of a lap, where its shim lies.
Box gap_box(const Lap& lap);

// Draws the lap back from the walls of a piece that stands in its gap; false where nothing is left.
bool keep_off(const Piece& piece, Lap& lap);

// The shim fills the gap over the whole lap; its longer side is its run.
Piece shim_piece(const Lap& lap, Index frame);

}  // namespace model
