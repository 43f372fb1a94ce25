// What can be said of a mesh from its triangles alone: is it closed, how much does it hold, do its
// faces look outwards.
#pragma once

#include "engine/geometry/mesh.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <utility>

namespace tests {

using V3 = std::array<double, 3>;

inline V3 position(const engine::Mesh& mesh, std::size_t corner) {
    const auto& p = mesh.vertices[mesh.triangles[corner]].position;
    return {static_cast<double>(p[0]), static_cast<double>(p[1]), static_cast<double>(p[2])};
}

inline V3 minus(const V3& a, const V3& b) { return {a[0] - b[0], a[1] - b[1], a[2] - b[2]}; }

inline V3 cross(const V3& a, const V3& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

inline double dot(const V3& a, const V3& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

// Edges that do not run exactly once each way between triangles, corners at one place being one.
inline std::size_t open_edges(const engine::Mesh& mesh) {
    std::map<std::array<float, 3>, std::size_t> places;
    const auto place = [&](std::size_t corner) {
        const auto& at = mesh.vertices[mesh.triangles[corner]].position;
        return places.emplace(at, places.size()).first->second;
    };
    std::map<std::pair<std::size_t, std::size_t>, int> runs;
    for (std::size_t i = 0; i + 2 < mesh.triangles.size(); i += 3) {
        const std::array<std::size_t, 3> at{place(i), place(i + 1), place(i + 2)};
        for (std::size_t k = 0; k < 3; ++k) ++runs[{at[k], at[(k + 1) % 3]}];
    }
    std::size_t open = 0;
    for (const auto& [edge, count] : runs) {
        const auto back = runs.find({edge.second, edge.first});
        if (count != 1 || back == runs.end() || back->second != 1) ++open;
    }
    return open;
}

inline double volume(const engine::Mesh& mesh) {
    double six_times = 0.0;
    for (std::size_t i = 0; i + 2 < mesh.triangles.size(); i += 3)
        six_times += dot(position(mesh, i), cross(position(mesh, i + 1), position(mesh, i + 2)));
    return six_times / 6.0;
}

inline double surface(const engine::Mesh& mesh) {
    double twice = 0.0;
    for (std::size_t i = 0; i + 2 < mesh.triangles.size(); i += 3) {
        const auto a = position(mesh, i);
        const auto n = cross(minus(position(mesh, i + 1), a), minus(position(mesh, i + 2), a));
        twice += std::sqrt(dot(n, n));
    }
    return twice / 2.0;
}

inline double longest_edge(const engine::Mesh& mesh, std::size_t first_corner) {
    double longest = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto edge =
            minus(position(mesh, first_corner + (k + 1) % 3), position(mesh, first_corner + k));
        longest = std::max(longest, std::sqrt(dot(edge, edge)));
    }
    return longest;
}

// Triangles with a corner whose normal is no unit vector or looks another way than the triangle
// winds. Slivers that single precision cannot tell from a line have no direction to check.
inline std::size_t faulty_triangles(const engine::Mesh& mesh) {
    std::size_t faulty = 0;
    for (std::size_t i = 0; i + 2 < mesh.triangles.size(); i += 3) {
        const auto a = position(mesh, i);
        const auto n = cross(minus(position(mesh, i + 1), a), minus(position(mesh, i + 2), a));
        const auto longest = longest_edge(mesh, i);
        const bool is_sliver = std::sqrt(dot(n, n)) < 1e-3 * longest;
        bool fine = true;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto& f = mesh.vertices[mesh.triangles[i + k]].normal;
            const V3 normal{static_cast<double>(f[0]), static_cast<double>(f[1]),
                            static_cast<double>(f[2])};
            fine = fine && std::abs(dot(normal, normal) - 1.0) < 1e-5;
            fine = fine && (is_sliver || dot(normal, n) > 0.9 * std::sqrt(dot(n, n)));
        }
        if (!fine) ++faulty;
    }
    return faulty;
}

}  // namespace tests
