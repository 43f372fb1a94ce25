// Axis-aligned boxes on whole nanometres.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

namespace engine {

using Nm = std::int64_t;
using Point = std::array<Nm, 3>;  // x, y, z in nm

struct Box {
    Point lo{};
    Point hi{};

    bool operator==(const Box&) const = default;
};

constexpr bool is_empty(const Box& box) {
    return box.lo[0] >= box.hi[0] || box.lo[1] >= box.hi[1] || box.lo[2] >= box.hi[2];
}

// Share a volume, not only a face, an edge or a corner.
constexpr bool overlaps(const Box& a, const Box& b) {
    return a.lo[0] < b.hi[0] && b.lo[0] < a.hi[0] && a.lo[1] < b.hi[1] && b.lo[1] < a.hi[1] &&
           a.lo[2] < b.hi[2] && b.lo[2] < a.hi[2];
}

// Share at least a point.
constexpr bool touches(const Box& a, const Box& b) {
    return a.lo[0] <= b.hi[0] && b.lo[0] <= a.hi[0] && a.lo[1] <= b.hi[1] && b.lo[1] <= a.hi[1] &&
           a.lo[2] <= b.hi[2] && b.lo[2] <= a.hi[2];
}

constexpr Box intersection(const Box& a, const Box& b) {
    Box both;
    for (std::size_t i = 0; i < 3; ++i) {
        both.lo[i] = std::max(a.lo[i], b.lo[i]);
        both.hi[i] = std::min(a.hi[i], b.hi[i]);
    }
    return both;
}

constexpr Box hull(const Box& a, const Box& b) {
    Box both;
    for (std::size_t i = 0; i < 3; ++i) {
        both.lo[i] = std::min(a.lo[i], b.lo[i]);
        both.hi[i] = std::max(a.hi[i], b.hi[i]);
    }
    return both;
}

}  // namespace engine
