#include "engine/geometry/nearest_points.h"

#include <algorithm>

namespace engine {
namespace {

struct Segment {
    const Vector& from;
    Vector along;
    double squared_length = 0.0;
};

Segment segment(const Vector& from, const Vector& to) {
    const Vector along = minus(to, from);
    return {from, along, dot(along, along)};
}

Vector at(const Segment& s, double share) { return plus(s.from, scaled(s.along, share)); }

double share_nearest_to(const Segment& s, const Vector& point) {
    if (s.squared_length <= 0.0) return 0.0;
    return std::clamp(dot(minus(point, s.from), s.along) / s.squared_length, 0.0, 1.0);
}

}  // namespace

// Where the lines come nearest, by the cross product of their directions: differences of dot
// products lose their digits when the two are nearly parallel. Then to the other segment and back
// again, which settles ends, and parallel segments wherever it starts. The points lie on the two
// segments, so rounding cannot make their distance too small.
ClosePair nearest_of_segments(const Vector& p,
                              const Vector& p_end,
                              const Vector& q,
                              const Vector& q_end) {
    const Segment first = segment(p, p_end);
    const Segment second = segment(q, q_end);
    const Vector across = cross(first.along, second.along);
    const double area = dot(across, across);
    double s = 0.0;
    if (area > 0.0) s = std::clamp(dot(cross(minus(q, p), second.along), across) / area, 0.0, 1.0);
    const Vector on_second = at(second, share_nearest_to(second, at(first, s)));
    const Vector on_first = at(first, share_nearest_to(first, on_second));
    const Vector between = minus(on_second, on_first);
    return {on_first, on_second, dot(between, between)};
}

// By the regions of the plane around a triangle in which a corner, an edge or the inner is nearest:
// Ericson, Real-Time Collision Detection, 2005, section 5.1.5; from memory.
Vector nearest_in_triangle(const Triangle& t, const Vector& at) {
    const Vector first = minus(t[1], t[0]);
    const Vector second = minus(t[2], t[0]);
    const Vector from_0 = minus(at, t[0]);
    const double a1 = dot(first, from_0);
    const double a2 = dot(second, from_0);
    if (a1 <= 0.0 && a2 <= 0.0) return t[0];
    const Vector from_1 = minus(at, t[1]);
    const double b1 = dot(first, from_1);
    const double b2 = dot(second, from_1);
    if (b1 >= 0.0 && b2 <= b1) return t[1];
    const double beside_first = a1 * b2 - b1 * a2;
    if (beside_first <= 0.0 && a1 >= 0.0 && b1 <= 0.0 && a1 > b1)
        return plus(t[0], scaled(first, a1 / (a1 - b1)));
    const Vector from_2 = minus(at, t[2]);
    const double c1 = dot(first, from_2);
    const double c2 = dot(second, from_2);
    if (c2 >= 0.0 && c1 <= c2) return t[2];
    const double beside_second = c1 * a2 - a1 * c2;
    if (beside_second <= 0.0 && a2 >= 0.0 && c2 <= 0.0 && a2 > c2)
        return plus(t[0], scaled(second, a2 / (a2 - c2)));
    const double beside_third = b1 * c2 - c1 * b2;
    const double to_1 = c1 - c2;
    const double to_2 = b2 - b1;
    if (beside_third <= 0.0 && to_1 >= 0.0 && to_2 >= 0.0 && to_1 + to_2 > 0.0)
        return plus(t[1], scaled(minus(t[2], t[1]), to_2 / (to_1 + to_2)));
    const double all = beside_first + beside_second + beside_third;
    if (!(all > 0.0)) return t[0];
    return plus(t[0], plus(scaled(first, beside_second / all), scaled(second, beside_first / all)));
}

}  // namespace engine
