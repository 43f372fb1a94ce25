// Convex bodies as bars, plates and rivet heads are, anywhere and turned anyhow.
#pragma once

#include "engine/geometry/convex_body.h"
#include "engine/geometry/vectors.h"

#include "tests/support/dice.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace tests {

inline double real_between(Dice& dice, double least, double most) {
    constexpr std::int64_t steps = 1'000'000'000;
    const double share = static_cast<double>(dice.between(0, steps)) / static_cast<double>(steps);
    return least + share * (most - least);
}

inline engine::Vector random_point(Dice& dice, double reach) {
    engine::Vector at{};
    for (auto& coordinate : at) coordinate = real_between(dice, -reach, reach);
    return at;
}

inline engine::Vector random_direction(Dice& dice) {
    while (true) {
        const auto at = random_point(dice, 1.0);
        const double length = engine::length_of(at);
        if (length > 0.1 && length < 1.0) return engine::unit(at);
    }
}

inline engine::Placement random_placement(Dice& dice, double reach) {
    engine::Placement place{.origin = random_point(dice, reach)};
    if (dice.chance(25)) return place;
    place.x = random_direction(dice);
    place.z = engine::unit(engine::cross(place.x, random_direction(dice)));
    place.y = engine::cross(place.z, place.x);
    if (dice.chance(20)) place.y = engine::scaled(place.y, -1.0);
    return place;
}

// A flat wall along x from about 0 to `length`, both ends cut at a slant.
inline engine::Prism mitred_wall(const engine::Vector& size,
                                 const std::array<double, 2>& at_start,
                                 const std::array<double, 2>& at_end) {
    engine::Prism prism;
    for (const auto& [y, z] : {std::pair{0.0, 0.0}, {1.0, 0.0}, {1.0, 1.0}, {0.0, 1.0}}) {
        const engine::Vector corner{0.0, y * size[1], z * size[2]};
        const auto cut = [&](double x, const std::array<double, 2>& slope) {
            return engine::Vector{x + slope[0] * corner[1] + slope[1] * corner[2], corner[1],
                                  corner[2]};
        };
        prism.near.push_back(cut(0.0, at_start));
        prism.far.push_back(cut(size[0], at_end));
    }
    return prism;
}

// Round about z, from 0 to `height`.
inline engine::Prism round_head(std::size_t sides, double radius, double height) {
    engine::Prism prism;
    for (std::size_t i = 0; i < sides; ++i) {
        const double angle =
            2.0 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(sides);
        const double x = radius * std::cos(angle);
        const double y = radius * std::sin(angle);
        prism.near.push_back({x, y, 0.0});
        prism.far.push_back({x, y, height});
    }
    return prism;
}

inline engine::ConvexBody random_shape(Dice& dice) {
    const auto kind = dice.below(4);
    engine::Vector size{};
    size[0] = real_between(dice, 40.0, 1500.0);
    size[1] = real_between(dice, 10.0, 60.0);
    size[2] = real_between(dice, 1.0, 6.0);
    if (kind == 0) return engine::convex_body({0.0, 0.0, 0.0}, size);
    if (kind == 1) {
        const double side = real_between(dice, 0.5, 50.0);
        const double height = real_between(dice, 0.5, 50.0);
        return engine::convex_body(round_head(3 + dice.below(22), side, height));
    }
    std::array<double, 2> at_start{};
    std::array<double, 2> at_end{};
    for (auto* slope : {&at_start, &at_end}) {
        (*slope)[0] = real_between(dice, -0.3, 0.3);
        (*slope)[1] = kind == 2 ? 0.0 : real_between(dice, -1.0, 1.0);
    }
    return engine::convex_body(mitred_wall(size, at_start, at_end));
}

inline engine::ConvexBody random_body(Dice& dice, double reach) {
    const auto shape = random_shape(dice);
    return engine::moved(shape, random_placement(dice, reach));
}

}  // namespace tests
