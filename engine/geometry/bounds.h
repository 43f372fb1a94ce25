// Boxes along the axes of the world, in doubles; box.h has those on whole nanometres.
#pragma once

#include "engine/geometry/placement.h"

#include <algorithm>
#include <limits>

namespace engine {

// mm. As made by default it holds nothing and grows by what is put in.
struct Bounds {
    Vector lo{std::numeric_limits<double>::max(), std::numeric_limits<double>::max(),
              std::numeric_limits<double>::max()};
    Vector hi{std::numeric_limits<double>::lowest(), std::numeric_limits<double>::lowest(),
              std::numeric_limits<double>::lowest()};

    bool operator==(const Bounds&) const = default;
};

constexpr void put_in(Bounds& bounds, const Vector& at) {
    for (std::size_t i = 0; i < 3; ++i) {
        bounds.lo[i] = std::min(bounds.lo[i], at[i]);
        bounds.hi[i] = std::max(bounds.hi[i], at[i]);
    }
}

constexpr void put_in(Bounds& bounds, const Bounds& other) {
    for (std::size_t i = 0; i < 3; ++i) {
        bounds.lo[i] = std::min(bounds.lo[i], other.lo[i]);
        bounds.hi[i] = std::max(bounds.hi[i], other.hi[i]);
    }
}

// Share at least a point.
constexpr bool touches(const Bounds& a, const Bounds& b) {
    return a.lo[0] <= b.hi[0] && b.lo[0] <= a.hi[0] && a.lo[1] <= b.hi[1] && b.lo[1] <= a.hi[1] &&
           a.lo[2] <= b.hi[2] && b.lo[2] <= a.hi[2];
}

// The square of the least distance, mm2.
constexpr double squared_gap(const Bounds& a, const Bounds& b) {
    double squared = 0.0;
    for (std::size_t i = 0; i < 3; ++i) {
        const double gap = std::max({0.0, a.lo[i] - b.hi[i], b.lo[i] - a.hi[i]});
        squared += gap * gap;
    }
    return squared;
}

}  // namespace engine
