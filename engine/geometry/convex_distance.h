// The exact distance of convex bodies from each other and from triangles: corner to face, edge to
// edge, and whether they share a point. No steps, no tolerance but the rounding of doubles.
#pragma once

#include "engine/geometry/convex_body.h"
#include "engine/geometry/nearest_points.h"

#include <limits>
#include <optional>

namespace engine {

// 0: they share a point, which is then given as both. mm.
struct Nearest {
    double distance = 0.0;
    Vector on_first{};
    Vector on_second{};
};

// Nothing if they are further apart than `cut_off`, mm.
std::optional<Nearest> nearest(const ConvexBody& a, const ConvexBody& b, double cut_off);
Nearest nearest(const ConvexBody& a, const ConvexBody& b);

// The triangle touches the body, crosses it or lies within.
bool crosses(const ConvexBody& body, const Triangle& triangle);

// Sets `best` when the two come nearer to each other than it says; its first point is on the body.
// Returns whether it did.
bool bring_nearer(ClosePair& best, const ConvexBody& body, const Triangle& triangle);

}  // namespace engine
