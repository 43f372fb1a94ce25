// What can be said of an exact solid from its boundary alone.
#pragma once

#include "engine/geometry/solid.h"
#include "engine/geometry/vectors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

namespace tests {

// Edges that are not used exactly once each way.
inline std::size_t open_edges(const engine::Solid& solid) {
    std::vector<std::array<int, 2>> times(solid.edges.size());
    for (const auto& use : solid.uses) ++times[use.edge][use.is_reversed ? 1 : 0];
    std::size_t open = 0;
    for (const auto& both : times) {
        if (both[0] != 1 || both[1] != 1) ++open;
    }
    return open;
}

// Uses that do not begin where the one before ended.
inline std::size_t broken_loops(const engine::Solid& solid) {
    std::size_t broken = 0;
    for (std::size_t i = 0; i < solid.loop_ends.size(); ++i) {
        const auto loop = solid.loop(i);
        for (std::size_t k = 0; k < loop.size(); ++k) {
            const auto end = solid.first_corner(engine::reversed(loop[k]));
            if (end != solid.first_corner(loop[(k + 1) % loop.size()])) ++broken;
        }
    }
    return broken;
}

// How far an edge's ends lie off the face that uses it, mm.
inline double worst_gap(const engine::Solid& solid) {
    double worst = 0.0;
    for (const auto& face : solid.faces) {
        for (std::uint32_t i = 0; i < face.loop_count; ++i) {
            for (const auto& use : solid.loop(face.first_loop + i)) {
                const auto& edge = solid.edges[use.edge];
                auto at = solid.corners[edge.from];
                if (edge.is_arc) at = engine::point_at(edge, edge.angle / 3.0);
                const auto from = engine::minus(at, face.origin);
                const double along = engine::dot(from, face.axis);
                const auto radial = engine::minus(from, engine::scaled(face.axis, along));
                const double off = face.kind == engine::FaceKind::plane
                                       ? along
                                       : engine::length_of(radial) - face.radius;
                worst = std::max(worst, std::abs(off));
            }
        }
    }
    return worst;
}

}  // namespace tests
