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

// What is nearest to an edge lies above one of its two faces.
bool is_above(const std::array<double, 3>& above, std::size_t k, std::size_t next) {
    return above[k] > 0.0 || above[next] > 0.0;
}

// Most pairs of edges show along `away`, the way to where the two seem nearest, that they are not.
void try_edges(ClosePair& best,
               const ConvexBody& body,
               const Triangle& t,
               const Heights& heights,
               const Vector& away) {
    std::array<double, ConvexBody::most_corners> reach;
    for (std::size_t i = 0; i < body.corners.size(); ++i) reach[i] = dot(away, body.corners[i]);
    const std::array<double, 3> ends{dot(away, t[0]), dot(away, t[1]), dot(away, t[2])};
    const double squared_length = dot(away, away);
    for (const auto& edge : body.edges) {
        const double from = std::max(reach[edge.corners[0]], reach[edge.corners[1]]);
        for (std::size_t k = 0; k < 3; ++k) {
            const std::size_t next = (k + 1) % 3;
            const double gap = std::min(ends[k], ends[next]) - from;
            if (gap > 0.0 && gap * gap >= best.squared * squared_length) continue;
            if (!is_above(heights.above[edge.faces[0]], k, next) &&
                !is_above(heights.above[edge.faces[1]], k, next)) {
                continue;
            }
            const auto pair = nearest_of_segments(body.corners[edge.corners[0]],
                                                  body.corners[edge.corners[1]], t[k], t[next]);
            if (pair.squared < best.squared) best = pair;
        }
    }
}

// From the box around a body to a triangle, by a few steps to and fro. Each way is looked along:
// what lies between the two at right angles to it is empty, however good the way is.
struct Way {
    Vector away{};
    bool is_too_far = false;
};

Way way_to(const Triangle& t, const OrientedBox& box, double squared) {
    constexpr int steps = 2;
    Way way;
    Vector on_box = nearest_in_box(box, scaled(plus(t[0], plus(t[1], t[2])), 1.0 / 3.0));
    for (int i = 0; i < steps; ++i) {
        const Vector on_triangle = nearest_in_triangle(t, on_box);
        on_box = nearest_in_box(box, on_triangle);
        way.away = minus(on_triangle, on_box);
        const double reach = dot(way.away, on_box);
        const double gap =
            std::min({dot(way.away, t[0]), dot(way.away, t[1]), dot(way.away, t[2])}) - reach;
        way.is_too_far = gap > 0.0 && gap * gap >= squared * dot(way.away, way.away);
        if (way.is_too_far) break;
    }
    return way;
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
    Way way = way_to(triangle, body.around, beyond_rounding(best.squared));
    if (way.is_too_far) return false;
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
    if (best.squared < before) way.away = minus(best.on_second, best.on_first);
    try_edges(best, body, triangle, heights, way.away);
    return best.squared < before;
}

}  // namespace engine
