// Where a shape's own axes lie in the world.
#pragma once

#include <array>
#include <cstddef>

namespace engine {

using Vector = std::array<double, 3>;

constexpr Vector cross(const Vector& a, const Vector& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

constexpr double dot(const Vector& a, const Vector& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

// Origin in mm; x, y and z are unit vectors at right angles. They may be left-handed: the shape is
// then mirrored.
struct Placement {
    Vector origin{};
    Vector x{1.0, 0.0, 0.0};
    Vector y{0.0, 1.0, 0.0};
    Vector z{0.0, 0.0, 1.0};

    bool operator==(const Placement&) const = default;
};

constexpr bool is_mirrored(const Placement& place) {
    return dot(cross(place.x, place.y), place.z) < 0.0;
}

constexpr Vector direction_in(const Placement& place, const Vector& own) {
    Vector world{};
    for (std::size_t i = 0; i < 3; ++i)
        world[i] = place.x[i] * own[0] + place.y[i] * own[1] + place.z[i] * own[2];
    return world;
}

constexpr Vector point_in(const Placement& place, const Vector& own) {
    Vector world = direction_in(place, own);
    for (std::size_t i = 0; i < 3; ++i) world[i] += place.origin[i];
    return world;
}

}  // namespace engine
