#include "engine/geometry/body_parts.h"
#include "engine/geometry/convex_distance.h"

#include <cassert>
#include <cmath>

namespace engine {
namespace {

// How far each corner of the triangle lies above each face of the body.
struct Heights {
    std::array<std::array<double, 3>, ConvexBody::most_faces> above;
    bool is_apart = false;  // all of the triangle lies above one of them

    double least(std::size_t face) const {
        return std::min({above[face][0], above[face][1], above[face][2]});
    }
};

// False: a face shows that they are at least as far apart as `squared` says.
bool measure(Heights& heights, const ConvexBody& body, const Triangle& triangle, double squared) {
    assert(body.faces.size() <= ConvexBody::most_faces);
    for (std::size_t f = 0; f < body.faces.size(); ++f) {
        for (std::size_t k = 0; k < 3; ++k)
            heights.above[f][k] = height_above(body.faces[f], triangle[k]);
        const double gap = heights.least(f);
        if (gap <= 0.0) continue;
        heights.is_apart = true;
        if (gap * gap >= squared) return false;
    }
    return true;
}

struct TrianglePlane {
    Vector along_first{};
    Vector along_second{};
    Vector normal{};  // not of unit length; zero without area
    double squared = 0.0;
};

TrianglePlane plane_of(const Triangle& t) {
    TrianglePlane plane{minus(t[1], t[0]), minus(t[2], t[0])};
    plane.normal = cross(plane.along_first, plane.along_second);
    plane.squared = dot(plane.normal, plane.normal);
    return plane;
}

// Seen along the normal. The gap holds for any normal, so also for that of a sliver.
struct AlongNormal {
    double gap = 0.0;  // in lengths of the normal
    double least = std::numeric_limits<double>::max();
    double most = std::numeric_limits<double>::lowest();
};

AlongNormal along_normal(const ConvexBody& body, const Triangle& t, const TrianglePlane& plane) {
    AlongNormal seen;
    for (const auto& corner : body.corners) {
        const double at = dot(plane.normal, minus(corner, t[0]));
        seen.least = std::min(seen.least, at);
        seen.most = std::max(seen.most, at);
    }
    const double at_1 = dot(plane.normal, plane.along_first);
    const double at_2 = dot(plane.normal, plane.along_second);
    seen.gap = std::max(
        {0.0, seen.least - std::max({0.0, at_1, at_2}), std::min({0.0, at_1, at_2}) - seen.most});
    return seen;
}

// The point of the triangle's plane beside a point, if it is in the triangle.
std::optional<Vector> foot_in(const Triangle& t, const TrianglePlane& plane, const Vector& at) {
    if (plane.squared <= 0.0) return std::nullopt;
    const Vector from = minus(at, t[0]);
    const double first = dot(cross(from, plane.along_second), plane.normal) / plane.squared;
    if (first < 0.0 || first > 1.0) return std::nullopt;
    const double second = dot(cross(plane.along_first, from), plane.normal) / plane.squared;
    if (second < 0.0 || first + second > 1.0) return std::nullopt;
    return plus(t[0], plus(scaled(plane.along_first, first), scaled(plane.along_second, second)));
}

// Where an edge of the body goes through the triangle.
std::optional<Vector> pierced(const ConvexBody& body,
                              const Triangle& t,
                              const TrianglePlane& plane) {
    for (const auto& edge : body.edges) {
        const Vector& from = body.corners[edge.corners[0]];
        const Vector& to = body.corners[edge.corners[1]];
        const double a = dot(plane.normal, minus(from, t[0]));
        const double b = dot(plane.normal, minus(to, t[0]));
        if ((a > 0.0 && b > 0.0) || (a < 0.0 && b < 0.0) || a == b) continue;
        const auto foot = foot_in(t, plane, plus(from, scaled(minus(to, from), a / (a - b))));
        if (foot) return foot;
    }
    return std::nullopt;
}

std::optional<Vector> shared_point(const ConvexBody& body,
                                   const Triangle& t,
                                   const TrianglePlane& plane) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (const auto within = part_within(body, t[k], t[(k + 1) % 3])) return within;
    }
    return pierced(body, t, plane);
}

void try_corners_of_triangle(ClosePair& best,
                             const ConvexBody& body,
                             const Triangle& t,
                             const Heights& heights) {
    for (std::size_t f = 0; f < body.faces.size(); ++f) {
        for (std::size_t k = 0; k < 3; ++k) {
            const double above = heights.above[f][k];
            if (above <= 0.0 || above * above >= best.squared) continue;
            const Vector foot = minus(t[k], scaled(body.faces[f].normal, above));
            if (is_over(body, body.faces[f], foot)) keep_nearer(best, foot, t[k]);
        }
    }
}

void try_corners_of_body(ClosePair& best,
                         const ConvexBody& body,
                         const Triangle& t,
                         const TrianglePlane& plane) {
    for (const auto& corner : body.corners) {
        const double at = dot(plane.normal, minus(corner, t[0]));
        if (at * at >= best.squared * plane.squared) continue;
        if (const auto foot = foot_in(t, plane, corner)) keep_nearer(best, corner, *foot);
    }
}

// What is nearest to an edge lies above one of its two faces. So may what lies far above one.
bool may_be_nearest(const std::array<double, 3>& above,
                    std::size_t k,
                    std::size_t next,
                    double squared,
                    bool& is_above) {
    const double least = std::min(above[k], above[next]);
    is_above = is_above || above[k] > 0.0 || above[next] > 0.0;
    return least <= 0.0 || least * least < squared;
}

void try_edges(ClosePair& best, const ConvexBody& body, const Triangle& t, const Heights& heights) {
    for (const auto& edge : body.edges) {
        const auto& above = heights.above[edge.faces[0]];
        const auto& above_other = heights.above[edge.faces[1]];
        for (std::size_t k = 0; k < 3; ++k) {
            const std::size_t next = (k + 1) % 3;
            bool is_above = false;
            if (!may_be_nearest(above, k, next, best.squared, is_above)) continue;
            if (!may_be_nearest(above_other, k, next, best.squared, is_above)) continue;
            if (!is_above) continue;
            const auto pair = nearest_of_segments(body.corners[edge.corners[0]],
                                                  body.corners[edge.corners[1]], t[k], t[next]);
            if (pair.squared < best.squared) best = pair;
        }
    }
}

}  // namespace

bool crosses(const ConvexBody& body, const Triangle& triangle) {
    Heights heights;
    if (!measure(heights, body, triangle, 0.0)) return false;
    const auto plane = plane_of(triangle);
    if (along_normal(body, triangle, plane).gap > 0.0) return false;
    return shared_point(body, triangle, plane).has_value();
}

bool bring_nearer(ClosePair& best, const ConvexBody& body, const Triangle& triangle) {
    Heights heights;
    if (!measure(heights, body, triangle, best.squared)) return false;
    const auto plane = plane_of(triangle);
    const auto seen = along_normal(body, triangle, plane);
    if (seen.gap > 0.0 && seen.gap * seen.gap >= best.squared * plane.squared) return false;
    const double before = best.squared;
    if (!heights.is_apart && seen.gap <= 0.0) {
        if (const auto shared = shared_point(body, triangle, plane)) {
            keep_nearer(best, *shared, *shared);
            return best.squared < before;
        }
    }
    try_corners_of_triangle(best, body, triangle, heights);
    try_corners_of_body(best, body, triangle, plane);
    try_edges(best, body, triangle, heights);
    return best.squared < before;
}

}  // namespace engine
