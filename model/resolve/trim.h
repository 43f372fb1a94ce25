// Cuts bars back until they enter nothing that ranks above them, and splits them where one of those
// crosses. Rules 3 and 4 of the staggered lap.
#pragma once

#include "model/resolve/skeleton.h"

namespace model {

// Fills FrameSkeleton::pieces, bar_of and each bar's piece range. Ends are square, for all walls
// alike. A bar of which nothing is left is a finding.
void trim_bars(FrameSkeleton& skeleton,
               const Frame& frame,
               Nm end_gap,
               std::vector<Finding>& findings);

}  // namespace model
