// Triangles in no order, and the plainest of meshes.
#pragma once

#include "engine/geometry/triangle_tree.h"

#include "tests/support/random_bodies.h"

#include <vector>

namespace tests {

struct Soup {
    std::vector<engine::Vector> points;
    std::vector<engine::TriangleTree::Corners> triangles;

    engine::Triangle at(std::size_t number) const {
        const auto& t = triangles[number];
        return {points[t[0]], points[t[1]], points[t[2]]};
    }
};

// Small and large triangles that share no order; some share points, some have no area.
inline Soup random_soup(Dice& dice, std::uint32_t count) {
    Soup soup;
    while (soup.triangles.size() < count) {
        const engine::Vector about = random_point(dice, 1'000.0);
        const double reach = dice.chance(5) ? 900.0 : 40.0;
        for (int k = 0; k < 3; ++k)
            soup.points.push_back(engine::plus(about, random_point(dice, reach)));
        const auto last = static_cast<std::uint32_t>(soup.points.size() - 1);
        soup.triangles.push_back({last, last - 2, last - 1});
        if (dice.chance(10)) soup.triangles.push_back({last, last, last - 1});
        if (dice.chance(10)) soup.triangles.push_back({last, dice.below(last), last - 1});
        if (dice.chance(3)) soup.triangles.push_back(soup.triangles.back());
    }
    return soup;
}

// 100 x 100 mm at z = 0.
inline Soup floor_of_two() {
    return {{{0.0, 0.0, 0.0}, {100.0, 0.0, 0.0}, {100.0, 100.0, 0.0}, {0.0, 100.0, 0.0}},
            {{0, 1, 2}, {0, 2, 3}}};
}

}  // namespace tests
