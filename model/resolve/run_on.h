// Edges at a re-entrant corner: the last of the three runs on past it, so that it laps the others
// as far as they reach.
#pragma once

#include "model/resolve/skeleton.h"

#include <span>

namespace model {

// Where three bars with their roots on the lines end at one point, each is set in behind those that
// rank above it, and what the lowest one laps of them is short by that on both sides. It runs on to
// the heel of the thinner of the others; nothing lies there but their own walls. Of ends that stand
// somewhere else by an allowance nothing is moved. Geometry of the staggered lap.
void run_on_at_roots(std::span<Bar> bars);

}  // namespace model
