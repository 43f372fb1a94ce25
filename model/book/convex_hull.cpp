#include "model/book/convex_hull.h"

#include <algorithm>

namespace model {
namespace {

double hull_turn(const std::array<double, 2>& a,
                 const std::array<double, 2>& b,
                 const std::array<double, 2>& c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

}  // namespace

std::vector<std::array<double, 2>> convex_hull(std::vector<std::array<double, 2>> points) {
    std::ranges::sort(points);
    std::vector<std::array<double, 2>> hull;
    for (int side = 0; side < 2; ++side) {
        const auto first = hull.size();
        for (const auto& p : points) {
            while (hull.size() >= first + 2 &&
                   hull_turn(hull[hull.size() - 2], hull.back(), p) <= 0.0)
                hull.pop_back();
            hull.push_back(p);
        }
        hull.pop_back();
        std::ranges::reverse(points);
    }
    return hull;
}

}  // namespace model
