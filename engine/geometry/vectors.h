// Small arithmetic of vectors in space, beside dot and cross in placement.h.
#pragma once

#include "engine/geometry/placement.h"

#include <cmath>

namespace engine {

constexpr Vector plus(const Vector& a, const Vector& b) {
    return {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
}

constexpr Vector minus(const Vector& a, const Vector& b) {
    return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}

constexpr Vector scaled(const Vector& a, double by) { return {a[0] * by, a[1] * by, a[2] * by}; }

inline double length_of(const Vector& a) { return std::sqrt(dot(a, a)); }

// The zero vector stays what it is.
inline Vector unit(const Vector& a) {
    const double length = length_of(a);
    return length > 0.0 ? scaled(a, 1.0 / length) : a;
}

}  // namespace engine
