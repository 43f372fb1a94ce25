// An invented van as a scanner might see it, and bars that stand about in it: what distances are
// checked and timed on. Nothing in it was measured on any van.
#pragma once

#include "engine/geometry/triangle_tree.h"

#include "tests/support/random_bodies.h"

#include <cmath>
#include <numbers>
#include <vector>

namespace tests {

struct VanMesh {
    std::vector<engine::Vector> points;
    std::vector<engine::TriangleTree::Corners> triangles;
};

// One piece: the walls of its section, each a convex body.
using BarPiece = std::vector<engine::ConvexBody>;

// 1 at the middle, smoothly 0 from `width` on.
inline double bump(double off, double width) {
    const double share = std::min(1.0, std::abs(off) / width);
    return 0.5 * (1.0 + std::cos(share * std::numbers::pi));
}

// x along the van, y across, z up. Walls that lean in and wave over their ribs, a floor with
// swages, an arch over each wheel, and the roughness of a scan.
inline engine::Vector van_point(double along, double around, Dice& dice) {
    const double x = 3'200.0 * along;
    const double angle = 2.0 * std::numbers::pi * around;
    const auto rounded = [](double c) { return std::copysign(std::pow(std::abs(c), 0.45), c); };
    double y = 870.0 * rounded(std::cos(angle));
    double z = 900.0 + 900.0 * rounded(std::sin(angle));
    y *= 1.0 - 0.06 * std::max(0.0, (z - 900.0) / 900.0);
    y += std::copysign(12.0 * std::sin(x / 70.0) * bump(z - 900.0, 900.0), -y);
    if (z < 5.0) z += 4.0 * std::sin(y / 25.0);
    const double arch = bump(x - 1'700.0, 420.0);
    const double reach = 230.0 * arch * bump(z - 120.0, 260.0);
    if (z < 400.0) y -= std::copysign(std::min(reach, std::abs(y)), y);
    for (auto* coordinate : {&y, &z}) *coordinate += real_between(dice, -0.8, 0.8);
    return {x, y, z};
}

inline VanMesh van_mesh(std::uint32_t along, std::uint32_t around) {
    VanMesh mesh;
    Dice dice{4711};
    for (std::uint32_t i = 0; i <= along; ++i) {
        for (std::uint32_t k = 0; k < around; ++k)
            mesh.points.push_back(van_point(static_cast<double>(i) / static_cast<double>(along),
                                            static_cast<double>(k) / static_cast<double>(around),
                                            dice));
    }
    for (std::uint32_t i = 0; i < along; ++i) {
        for (std::uint32_t k = 0; k < around; ++k) {
            const std::uint32_t next = (k + 1) % around;
            const std::uint32_t a = i * around + k;
            const std::uint32_t b = i * around + next;
            mesh.triangles.push_back({a, a + around, b});
            mesh.triangles.push_back({b, a + around, b + around});
        }
    }
    return mesh;
}

// An angle or a flat bar, square or mitred, up to 0.9 m; some along the van, some turned anyhow.
inline BarPiece random_piece(Dice& dice) {
    std::array<std::array<double, 2>, 2> slopes{};
    if (dice.chance(40)) {
        for (auto& slope : slopes)
            for (auto& part : slope) part = real_between(dice, -0.7, 0.7);
    }
    const double length = real_between(dice, 120.0, 900.0);
    const double leg = real_between(dice, 19.0, 51.0);
    const double wall = real_between(dice, 1.6, 4.8);
    auto place = random_placement(dice, 0.0);
    place.origin = {real_between(dice, 100.0, 3'000.0), real_between(dice, -820.0, 820.0),
                    real_between(dice, 30.0, 1'700.0)};
    BarPiece piece;
    for (const auto& size :
         {engine::Vector{length, leg, wall}, engine::Vector{length, wall, leg}}) {
        const auto prism = mitred_wall(size, slopes[0], slopes[1]);
        piece.push_back(engine::moved(engine::convex_body(prism), place));
        if (piece.size() == 1 && dice.chance(30)) break;
    }
    return piece;
}

inline std::vector<BarPiece> random_pieces(std::uint32_t seed, std::size_t count) {
    Dice dice{seed};
    std::vector<BarPiece> pieces;
    while (pieces.size() < count) pieces.push_back(random_piece(dice));
    return pieces;
}

}  // namespace tests
