// How deep two convex bodies share a place, and how one gets out of the other.
#pragma once

#include "engine/geometry/convex_body.h"

namespace engine {

struct Overlap {
    double depth = 0.0;  // mm; 0: they share no volume
    Vector direction{};  // unit: moved by `depth` along it, the first is clear of the second
};

// The least move of all directions: the separating axis theorem over face normals and pairs of
// edges.
Overlap overlap(const ConvexBody& a, const ConvexBody& b);

// How far `a` has to be moved along `direction` (unit) until it shares no volume with `b`, mm.
// 0 when it does not now.
double shift_to_clear(const ConvexBody& a, const ConvexBody& b, const Vector& direction);

}  // namespace engine
