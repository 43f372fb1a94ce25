// The corners of the polygon that stands for a circle, made once.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace engine {

// A hole is drawn as a polygon with its corners on the true circle.
inline constexpr std::size_t hole_chords = 24;

// Counter-clockwise from (1, 0). The quarters mirror each other exactly, so that each circle has
// one leftmost and one rightmost corner.
inline const std::array<std::array<double, 2>, hole_chords>& unit_circle() {
    static_assert(hole_chords % 4 == 0);
    static const auto corners = [] {
        std::array<std::array<double, 2>, hole_chords> all{};
        constexpr std::size_t quarter = hole_chords / 4;
        for (std::size_t i = 0; i < quarter; ++i) {
            const double angle = 2.0 * std::numbers::pi * static_cast<double>(i) / hole_chords;
            const double c = i == 0 ? 1.0 : std::cos(angle);
            const double s = i == 0 ? 0.0 : std::sin(angle);
            all[i] = {c, s};
            all[i + quarter] = {-s, c};
            all[i + 2 * quarter] = {-c, -s};
            all[i + 3 * quarter] = {s, -c};
        }
        return all;
    }();
    return corners;
}

}  // namespace engine
