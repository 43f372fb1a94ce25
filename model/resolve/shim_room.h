// Keeps shims out of the way of parts.
#pragma once

#include "model/resolve/lap.h"

#include <vector>

namespace model {

// Cuts back each lap across a gap by the parts of joints that lie in the gap, where its shim would
// go; a lap of which nothing is left is taken out. Members in the gap are seen to by laps_of.
void keep_shims_clear(const FrameSkeleton& skeleton, std::vector<Lap>& laps);

}  // namespace model
