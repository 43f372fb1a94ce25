// Obstacles of the room as convex bodies: what clearances are measured from and the view draws.
#pragma once

#include "engine/geometry/convex.h"
#include "model/resolve/named_values.h"

#include <string>
#include <vector>

namespace model {

// Bodies in the room, mm, that together are the obstacle; they touch and do not overlap but where
// said. What is round is held by flat faces that touch it, so that no part of it is left out; they
// stand out by round_tolerance_mm at most, and beyond a radius of 290 mm by 1/2900 of it.
struct SolidObstacle {
    std::vector<engine::Prism> bodies;
    std::string fault;  // why it has none, as the end of a sentence; empty where a formula fails,
                        // which has a finding of its own
};

inline constexpr double round_tolerance_mm = 0.1;

// Of a scan: empty, without a fault. Walls and ceilings reach 1 m outward from their surface and
// 1 m beyond the first and last of what was measured of them across it.
SolidObstacle obstacle_shape(const ObstacleShape& shape, const NamedValues& values);

// How many flat faces of one size hold an arc from outside within the tolerance; 1 or more. The
// radius in mm, the angle in radians. A body has 128 faces at most.
std::size_t faces_round(double radius, double angle, std::size_t most = 120);

}  // namespace model
