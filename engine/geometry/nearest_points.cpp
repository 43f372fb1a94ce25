#include "engine/geometry/nearest_points.h"

#include <algorithm>
#include <limits>

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

// Each end against the other segment settles parallel ones; two that cross are settled where the
// lines come nearest. Every pair that is tried is made of points of the two segments, so rounding
// cannot make the answer too small.
ClosePair nearest_of_segments(const Vector& p,
                              const Vector& p_end,
                              const Vector& q,
                              const Vector& q_end) {
    const Segment first = segment(p, p_end);
    const Segment second = segment(q, q_end);
    ClosePair best{.squared = std::numeric_limits<double>::max()};
    const double both = dot(first.along, second.along);
    const double area = first.squared_length * second.squared_length - both * both;
    const Vector between = minus(p, q);
    if (area > 0.0) {
        const double on_second = dot(second.along, between);
        const double on_first = dot(first.along, between);
        double s =
            std::clamp((both * on_second - on_first * second.squared_length) / area, 0.0, 1.0);
        const double t = share_nearest_to(second, at(first, s));
        s = share_nearest_to(first, at(second, t));
        keep_nearer(best, at(first, s), at(second, t));
        constexpr double nearly_parallel = 1e-8;  // the square of an angle's sine
        if (area > nearly_parallel * first.squared_length * second.squared_length) return best;
    }
    for (const auto* end : {&p, &p_end})
        keep_nearer(best, *end, at(second, share_nearest_to(second, *end)));
    for (const auto* end : {&q, &q_end})
        keep_nearer(best, at(first, share_nearest_to(first, *end)), *end);
    return best;
}

}  // namespace engine
