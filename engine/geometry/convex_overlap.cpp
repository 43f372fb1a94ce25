#include "engine/geometry/convex_overlap.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <limits>

namespace engine {
namespace {

// Directions of edges, each once whichever way it runs.
std::vector<Vector> directions_of(const ConvexBody& body) {
    constexpr double is_parallel = 1e-12;
    std::vector<Vector> directions;
    for (const auto& edge : body.edges) {
        const Vector along =
            unit(minus(body.corners[edge.corners[1]], body.corners[edge.corners[0]]));
        const bool is_known = std::ranges::any_of(directions, [&](const Vector& known) {
            return length_of(cross(known, along)) < is_parallel;
        });
        if (!is_known) directions.push_back(along);
    }
    return directions;
}

// Calls `visit` with each direction in which two bodies may be told apart, until it says false.
template <class Visit>
void for_each_axis(const ConvexBody& a, const ConvexBody& b, Visit visit) {
    for (const auto* body : {&a, &b}) {
        for (const auto& face : body->faces) {
            if (!visit(face.normal)) return;
        }
    }
    const auto of_b = directions_of(b);
    for (const auto& along : directions_of(a)) {
        for (const auto& other : of_b) {
            const Vector axis = cross(along, other);
            const double length = length_of(axis);
            // Edges that lie along each other give no direction of their own.
            if (length < 1e-9) continue;
            if (!visit(scaled(axis, 1.0 / length))) return;
        }
    }
}

// How far `a` has to go along `axis` to be past `b`, and how far against it.
struct WaysOut {
    double along = 0.0;
    double against = 0.0;
};

WaysOut ways_out(const ConvexBody& a, const ConvexBody& b, const Vector& axis) {
    const auto reach = [](const ConvexBody& body, const Vector& direction) {
        double most = std::numeric_limits<double>::lowest();
        for (const auto& corner : body.corners) most = std::max(most, dot(corner, direction));
        return most;
    };
    const Vector back = scaled(axis, -1.0);
    return {reach(b, axis) + reach(a, back), reach(a, axis) + reach(b, back)};
}

}  // namespace

Overlap overlap(const ConvexBody& a, const ConvexBody& b) {
    if (!touches(a.bounds, b.bounds)) return {};
    Overlap least{.depth = std::numeric_limits<double>::max()};
    for_each_axis(a, b, [&](const Vector& axis) {
        const WaysOut ways = ways_out(a, b, axis);
        if (ways.along <= 0.0 || ways.against <= 0.0) {
            least = {};
            return false;
        }
        if (ways.along < least.depth) least = {ways.along, axis};
        if (ways.against < least.depth) least = {ways.against, scaled(axis, -1.0)};
        return true;
    });
    return least;
}

// The moves at which they share volume are a convex body: the differences of their points. The way
// out ends at the first of its faces.
double shift_to_clear(const ConvexBody& a, const ConvexBody& b, const Vector& direction) {
    if (!touches(a.bounds, b.bounds)) return 0.0;
    double shift = std::numeric_limits<double>::max();
    for_each_axis(a, b, [&](const Vector& axis) {
        const WaysOut ways = ways_out(a, b, axis);
        if (ways.along <= 0.0 || ways.against <= 0.0) {
            shift = 0.0;
            return false;
        }
        const double pace = dot(axis, direction);
        if (pace > 0.0) shift = std::min(shift, ways.along / pace);
        if (pace < 0.0) shift = std::min(shift, ways.against / -pace);
        return true;
    });
    return shift;
}

}  // namespace engine
