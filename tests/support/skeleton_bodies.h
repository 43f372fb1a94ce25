// Convex parts of a plate, so that checks can ask what lies inside of it.
#pragma once

#include "tests/support/skeleton.h"

#include <vector>

namespace tests {

// What the plate's outlines leave of it, in parts that do not overlap. Cut-outs of a plate that
// has sloping edges are taken as filled.
std::vector<ConvexBody> bodies_of(const SkeletonPlate& plate);

ConvexBody body_of(const Box& box);

// Whether the two share volume; of sloping ones, more than rounding of their corners explains.
bool share_volume(const ConvexBody& a, const ConvexBody& b);

}  // namespace tests
