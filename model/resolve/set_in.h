// How far each bar's faces lie behind their layout planes, so that plates on one face never share a
// depth. Rule 2 of the staggered lap.
#pragma once

#include "model/resolve/skeleton.h"

namespace model {

// Fills Bar::set_in: for every face, at least the set-in of each higher bar whose plate overlaps
// there plus that plate's thickness; where meetings differ the larger wins.
void set_in_bars(FrameSkeleton& skeleton);

// The axis across which both bars of a meeting have walls: neither's run.
constexpr std::size_t common_axis(const Bar& a, const Bar& b) {
    return 3 - index_of(a.run) - index_of(b.run);
}

// Both have a primary wall in one layout plane, the metal on the same side, and the walls overlap
// there (over the bars' untrimmed runs).
bool share_a_face(const Bar& a, const Bar& b);

}  // namespace model
