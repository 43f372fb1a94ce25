// Convex bodies with few corners: whether two of them share a volume, and how deep.
#pragma once

#include "engine/geometry/placement.h"

#include <array>
#include <cstddef>
#include <vector>

namespace engine {

// A body between two faces with as many corners each: corner i of one face is joined to corner i of
// the other. The whole must be convex; coordinates in mm.
struct Prism {
    std::vector<Vector> near;
    std::vector<Vector> far;
};

// By how much the bodies would have to be moved apart along the direction in which that is least:
// the separating axis theorem over face normals and pairs of edges. 0: they share no volume.
double depth_of_overlap(const Prism& a, const Prism& b);

}  // namespace engine
