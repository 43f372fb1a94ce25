// How deep two convex bodies share a place, and how one gets out of the other or up to it.
#pragma once

#include "engine/geometry/convex_body.h"
#include "engine/geometry/nearest_points.h"

#include <optional>
#include <span>
#include <vector>

namespace engine {

struct Overlap {
    double depth = 0.0;  // mm; 0: they share no volume
    Vector direction{};  // unit: moved by `depth` along it, the first is clear of the second
};

// The least move of all directions: the separating axis theorem over face normals and pairs of
// edges.
Overlap overlap(const ConvexBody& a, const ConvexBody& b);

// Whether overlap() would find more depth than that; mostly without looking at all directions.
bool is_deeper(const ConvexBody& a, const ConvexBody& b, double depth);

// What tells a body apart from others: its corners, and the directions of its faces and edges, each
// once, either way round. Made once for many questions.
struct Facets {
    std::vector<Vector> corners;
    std::vector<Vector> normals;
    std::vector<Vector> edges;
    Bounds bounds;
};

Facets facets_of(const ConvexBody& body);
std::vector<Facets> facets_of(std::span<const ConvexBody> bodies);

// The moves of a body along a direction, mm, between which it is in the way of another: just at
// `from` and `to` they touch. Either may be below 0.
struct Passage {
    double from = 0.0;
    double to = 0.0;
};

// Moves of `a` along `direction` (unit) at which it shares volume with `b`, or crosses the
// triangle. Nothing if it passes by, or along it: less than `grazing` of overlap is a touch.
std::optional<Passage> passage(const ConvexBody& a, const ConvexBody& b, const Vector& direction);
std::optional<Passage> passage(const ConvexBody& a, const Triangle& b, const Vector& direction);
std::optional<Passage> passage(const Facets& a, const Facets& b, const Vector& direction);
std::optional<Passage> passage(const Facets& a, const Triangle& b, const Vector& direction);

inline constexpr double grazing = 1e-9;  // mm

// All that the bounds fill when moved from `from` to `to` along the direction.
Bounds swept(const Bounds& bounds, const Vector& direction, double from, double to);

// The first move from `at` on, or `at` itself, that is in no passage. Sorts them.
double end_of_blocked(std::vector<Passage>& blocked, double at);

// How far `a` has to be moved along `direction` (unit) until it shares no volume with `b`, mm.
// 0 when it does not now.
double shift_to_clear(const ConvexBody& a, const ConvexBody& b, const Vector& direction);

// The same for groups that are moved together; nothing if that takes more than `most`.
std::optional<double> shift_to_clear(std::span<const Facets> things,
                                     std::span<const Facets> others,
                                     const Vector& direction,
                                     double most);

}  // namespace engine
