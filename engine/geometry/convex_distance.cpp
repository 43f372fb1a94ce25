#include "engine/geometry/convex_distance.h"

#include "engine/geometry/body_parts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace engine {
namespace {

constexpr double a_touch = 1e-9;  // mm

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

// From the box around one body to that around the other, by a few steps to and fro. What lies
// between the bodies at right angles to it is empty, however good the way is.
Vector way_between(const OrientedBox& a, const OrientedBox& b) {
    constexpr int steps = 3;
    Vector on_a = nearest_in_box(a, b.centre);
    Vector on_b{};
    for (int i = 0; i < steps; ++i) {
        on_b = nearest_in_box(b, on_a);
        on_a = nearest_in_box(a, on_b);
    }
    return minus(on_b, on_a);
}

// How far the corners of a body reach along a direction.
struct Reach {
    Reach(const ConvexBody& body, const Vector& along) {
        for (std::size_t i = 0; i < body.corners.size(); ++i) of[i] = dot(along, body.corners[i]);
        const auto all = std::span(of).first(body.corners.size());
        least = *std::ranges::min_element(all);
        most = *std::ranges::max_element(all);
    }

    std::array<double, ConvexBody::most_corners> of;
    double least = 0.0;
    double most = 0.0;
};

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

void try_pair(ClosePair& best,
              const ConvexBody& a,
              const BodyEdge& of_a,
              const ConvexBody& b,
              const BodyEdge& of_b) {
    const auto pair = nearest_of_segments(a.corners[of_a.corners[0]], a.corners[of_a.corners[1]],
                                          b.corners[of_b.corners[0]], b.corners[of_b.corners[1]]);
    if (pair.squared < best.squared) best = pair;
}

// Most pairs of edges show along `away` that they are not the nearest.
void try_edges(ClosePair& best, const ConvexBody& a, const ConvexBody& b, const Vector& away) {
    const Reach reach(a, away);
    const Reach starts(b, away);
    const double squared_length = dot(away, away);
    const auto is_too_far = [&](double gap) {
        return gap > 0.0 && gap * gap >= best.squared * squared_length;
    };
    for (const auto& of_a : a.edges) {
        const double from = std::max(reach.of[of_a.corners[0]], reach.of[of_a.corners[1]]);
        if (is_too_far(starts.least - from)) continue;
        for (const auto& of_b : b.edges) {
            const double to = std::min(starts.of[of_b.corners[0]], starts.of[of_b.corners[1]]);
            if (is_too_far(to - from) || !is_above_a_face(a, of_a, b, of_b) ||
                !is_above_a_face(b, of_b, a, of_a)) {
                continue;
            }
            try_pair(best, a, of_a, b, of_b);
        }
    }
}

void try_all_edges(ClosePair& best, const ConvexBody& a, const ConvexBody& b) {
    for (const auto& of_a : a.edges) {
        for (const auto& of_b : b.edges) try_pair(best, a, of_a, b, of_b);
    }
}

std::optional<Vector> shared_point(const ConvexBody& a, const ConvexBody& b) {
    const auto shared = edge_within(a, b);
    return shared ? shared : edge_within(b, a);
}

}  // namespace

std::optional<Nearest> nearest(const ConvexBody& a, const ConvexBody& b, double cut_off) {
    const double squared = cut_off * cut_off;
    if (squared_gap(a.bounds, b.bounds) > squared) return std::nullopt;
    Vector away = way_between(a.around, b.around);
    const double gap = Reach(b, away).least - Reach(a, away).most;
    if (gap > 0.0 && gap * gap > squared * dot(away, away)) return std::nullopt;
    const double over_faces = std::max(gap_over_faces(a, b), gap_over_faces(b, a));
    if (over_faces > cut_off) return std::nullopt;
    if (gap <= 0.0 && over_faces <= 0.0) {
        if (const auto shared = shared_point(a, b)) return Nearest{0.0, *shared, *shared};
    }
    const double none = std::nextafter(squared, std::numeric_limits<double>::infinity());
    ClosePair best{.squared = none};
    try_corners(best, a, b, true);
    try_corners(best, b, a, false);
    if (best.squared < none) away = minus(best.on_second, best.on_first);
    try_edges(best, a, b, away);
    // Rounding may hide all of two bodies that just touch.
    if (best.squared == none && (over_faces <= a_touch || std::isinf(none))) {
        try_all_edges(best, a, b);
    }
    if (best.squared == none) return std::nullopt;
    return Nearest{std::sqrt(best.squared), best.on_first, best.on_second};
}

Nearest nearest(const ConvexBody& a, const ConvexBody& b) {
    return *nearest(a, b, std::numeric_limits<double>::infinity());
}

}  // namespace engine
