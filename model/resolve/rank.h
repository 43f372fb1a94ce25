// Who lies outside whom: what ends on another's span ranks below it; at a corner posts rank above
// x-rails above y-rails. The rule of the staggered lap, common practice.
#pragma once

#include "model/resolve/skeleton.h"

#include <vector>

namespace model {

// Fills close, meetings, above, around, near, order and each bar's depth. A loop of ranks becomes a
// finding that names its members and is broken where the corner order says.
void rank_bars(FrameSkeleton& skeleton, const Frame& frame, std::vector<Finding>& findings);

}  // namespace model
