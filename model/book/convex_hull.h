// What a rubber band round points would enclose.
#pragma once

#include <array>
#include <vector>

namespace model {

// The least convex polygon that holds the points, counter-clockwise.
std::vector<std::array<double, 2>> convex_hull(std::vector<std::array<double, 2>> points);

}  // namespace model
