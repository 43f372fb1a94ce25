// What the distances from a convex body have in common; for the files of this folder.
#pragma once

#include "engine/geometry/convex_body.h"
#include "engine/geometry/vectors.h"

#include <algorithm>
#include <optional>

namespace engine {

// Whether a point in the plane of a face lies in the face.
inline bool is_over(const ConvexBody& body, const BodyFace& face, const Vector& at) {
    std::size_t last = body.loops[face.first + face.count - 1U];
    for (std::size_t i = 0; i < face.count; ++i) {
        const std::size_t next = body.loops[face.first + i];
        const Vector& from = body.corners[last];
        const Vector edge = minus(body.corners[next], from);
        if (dot(cross(face.normal, edge), minus(at, from)) < 0.0) return false;
        last = next;
    }
    return true;
}

// The middle of what of a segment lies in the body or on it.
inline std::optional<Vector> part_within(const ConvexBody& body,
                                         const Vector& from,
                                         const Vector& to) {
    double enters = 0.0;
    double leaves = 1.0;
    for (const auto& face : body.faces) {
        const double a = height_above(face, from);
        const double b = height_above(face, to);
        if (a > 0.0 && b > 0.0) return std::nullopt;
        if (a > 0.0) enters = std::max(enters, a / (a - b));
        if (b > 0.0) leaves = std::min(leaves, a / (a - b));
        if (enters > leaves) return std::nullopt;
    }
    return plus(from, scaled(minus(to, from), (enters + leaves) / 2.0));
}

inline Vector nearest_in_box(const OrientedBox& box, const Vector& at) {
    const Vector off = minus(at, box.centre);
    Vector nearest = box.centre;
    for (std::size_t k = 0; k < 3; ++k) {
        const double along = std::clamp(dot(off, box.axes[k]), -box.half[k], box.half[k]);
        nearest = plus(nearest, scaled(box.axes[k], along));
    }
    return nearest;
}

}  // namespace engine
