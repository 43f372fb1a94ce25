#include "engine/geometry/convex_distance.h"

#include "engine/geometry/body_parts.h"

#include <cmath>

namespace engine {
namespace {

std::optional<Vector> edge_within(const ConvexBody& edges, const ConvexBody& body) {
    for (const auto& edge : edges.edges) {
        const auto within =
            part_within(body, edges.corners[edge.corners[0]], edges.corners[edge.corners[1]]);
        if (within) return within;
    }
    return std::nullopt;
}

// The largest gap that a face of `body` shows; 0 or less: none does.
double gap_over_faces(const ConvexBody& body, const ConvexBody& other) {
    double gap = 0.0;
    for (const auto& face : body.faces) {
        const Vector down = scaled(face.normal, -1.0);
        gap = std::max(gap, height_above(face, furthest_corner(other, down)));
    }
    return gap;
}

void try_corners(ClosePair& best,
                 const ConvexBody& body,
                 const ConvexBody& other,
                 bool body_is_first) {
    for (const auto& face : body.faces) {
        for (const auto& corner : other.corners) {
            const double above = height_above(face, corner);
            if (above <= 0.0 || above * above >= best.squared) continue;
            const Vector foot = minus(corner, scaled(face.normal, above));
            if (!is_over(body, face, foot)) continue;
            if (body_is_first) {
                keep_nearer(best, foot, corner);
            } else {
                keep_nearer(best, corner, foot);
            }
        }
    }
}

// What is nearest to an edge lies above one of its two faces.
bool is_above_a_face(const ConvexBody& body,
                     const BodyEdge& edge,
                     const ConvexBody& other,
                     const BodyEdge& of_other) {
    for (const auto f : edge.faces) {
        for (const auto c : of_other.corners) {
            if (height_above(body.faces[f], other.corners[c]) > 0.0) return true;
        }
    }
    return false;
}

void try_edges(ClosePair& best, const ConvexBody& a, const ConvexBody& b, bool all) {
    for (const auto& of_a : a.edges) {
        for (const auto& of_b : b.edges) {
            if (!all && !(is_above_a_face(a, of_a, b, of_b) && is_above_a_face(b, of_b, a, of_a))) {
                continue;
            }
            const auto pair =
                nearest_of_segments(a.corners[of_a.corners[0]], a.corners[of_a.corners[1]],
                                    b.corners[of_b.corners[0]], b.corners[of_b.corners[1]]);
            if (pair.squared < best.squared) best = pair;
        }
    }
}

}  // namespace

std::optional<Nearest> nearest(const ConvexBody& a, const ConvexBody& b, double cut_off) {
    if (squared_gap(a.bounds, b.bounds) > cut_off * cut_off) return std::nullopt;
    const double gap = std::max(gap_over_faces(a, b), gap_over_faces(b, a));
    if (gap > cut_off) return std::nullopt;
    if (gap <= 0.0) {
        auto shared = edge_within(a, b);
        if (!shared) shared = edge_within(b, a);
        if (shared) return Nearest{0.0, *shared, *shared};
    }
    ClosePair best{.squared = std::numeric_limits<double>::max()};
    try_corners(best, a, b, true);
    try_corners(best, b, a, false);
    try_edges(best, a, b, false);
    // Rounding may hide all of two bodies that just touch.
    if (best.squared == std::numeric_limits<double>::max()) try_edges(best, a, b, true);
    const double distance = std::sqrt(best.squared);
    if (distance > cut_off) return std::nullopt;
    return Nearest{distance, best.on_first, best.on_second};
}

Nearest nearest(const ConvexBody& a, const ConvexBody& b) {
    return *nearest(a, b, std::numeric_limits<double>::infinity());
}

}  // namespace engine
