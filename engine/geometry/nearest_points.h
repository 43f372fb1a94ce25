// Where two things come nearest to each other, and that for the simplest of them.
#pragma once

#include "engine/geometry/vectors.h"

namespace engine {

using Triangle = std::array<Vector, 3>;  // its corners, mm; may have no area

// A point on each of two things, mm, and the square of their distance.
struct ClosePair {
    Vector on_first{};
    Vector on_second{};
    double squared = 0.0;
};

ClosePair nearest_of_segments(const Vector& p,
                              const Vector& p_end,
                              const Vector& q,
                              const Vector& q_end);

Vector nearest_in_triangle(const Triangle& t, const Vector& at);

// What a bound shows to be further away than this is no nearer than `squared` says, whatever
// rounding did to the bound; so a touch is never passed over.
constexpr double beyond_rounding(double squared) { return squared * (1.0 + 1e-9) + 1e-18; }

// Keeps the nearer of the two.
inline void keep_nearer(ClosePair& best, const Vector& on_first, const Vector& on_second) {
    const Vector between = minus(on_second, on_first);
    const double squared = dot(between, between);
    if (squared < best.squared) best = {on_first, on_second, squared};
}

}  // namespace engine
