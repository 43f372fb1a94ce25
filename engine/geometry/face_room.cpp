#include "engine/geometry/face_room.h"

#include <algorithm>
#include <cmath>

namespace engine {
namespace {

double distance_to_edge(const FacePoint& at, const FacePoint& from, const FacePoint& to) {
    const double dx = to[0] - from[0];
    const double dy = to[1] - from[1];
    const double share = ((at[0] - from[0]) * dx + (at[1] - from[1]) * dy) / (dx * dx + dy * dy);
    const double nearest = std::clamp(share, 0.0, 1.0);
    return std::hypot(at[0] - from[0] - nearest * dx, at[1] - from[1] - nearest * dy);
}

}  // namespace

double twice_area(std::span<const FacePoint> loop) {
    double sum = 0.0;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& p = loop[i];
        const auto& q = loop[(i + 1) % loop.size()];
        sum += p[0] * q[1] - p[1] * q[0];
    }
    return sum;
}

// Counts the sides that a line from the point to the right passes.
bool is_inside(const FacePoint& at, std::span<const FacePoint> loop) {
    bool inside = false;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& p = loop[i];
        const auto& q = loop[(i + 1) % loop.size()];
        if ((p[1] > at[1]) == (q[1] > at[1])) continue;
        if (at[0] < p[0] + (at[1] - p[1]) / (q[1] - p[1]) * (q[0] - p[0])) inside = !inside;
    }
    return inside;
}

bool is_clear_of(const RoundHole& hole, std::span<const FacePoint> loop) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const auto& to = loop[(i + 1) % loop.size()];
        if (distance_to_edge(hole.at, loop[i], to) < hole.radius + least_gap) return false;
    }
    return true;
}

bool is_clear_of(const RoundHole& hole, const RoundHole& other) {
    return std::hypot(hole.at[0] - other.at[0], hole.at[1] - other.at[1]) >=
           hole.radius + other.radius + least_gap;
}

}  // namespace engine
