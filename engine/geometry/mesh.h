// Drawable values: triangles, crisp edges and what they belong to. Made on the CPU, checked by
// tests without any graphics, copied to the graphics card by engine/render.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

namespace engine {

// One corner of a triangle: position and unit normal in mm, world axes (z up).
struct MeshVertex {
    std::array<float, 3> position{};
    std::array<float, 3> normal{};

    bool operator==(const MeshVertex&) const = default;
};

// Triangles wind counter-clockwise seen from outside. `edges` holds pairs of positions: the crisp
// lines of the shape (outline, creases, rims of holes), no triangulation lines.
struct Mesh {
    std::vector<MeshVertex> vertices;
    std::vector<std::uint32_t> triangles;     // three indices into vertices each
    std::vector<std::array<float, 3>> edges;  // two positions each

    bool operator==(const Mesh&) const = default;
};

}  // namespace engine
