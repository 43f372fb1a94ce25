#include "engine/geometry/convex_overlap.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>

namespace engine {
namespace {

// Two directions that run along each other, either way, tell bodies apart alike.
void add_once(std::vector<Vector>& directions, const Vector& along) {
    constexpr double is_parallel = 1e-12;
    const bool is_known = std::ranges::any_of(directions, [&](const Vector& known) {
        return length_of(cross(known, along)) < is_parallel;
    });
    if (!is_known) directions.push_back(along);
}

struct Outline {
    std::span<const Vector> corners;
    std::vector<Vector> normals;
    std::vector<Vector> edges;  // their directions
};

Outline outline_of(const ConvexBody& body) {
    Outline outline{.corners = body.corners};
    for (const auto& face : body.faces) add_once(outline.normals, face.normal);
    for (const auto& edge : body.edges) {
        add_once(outline.edges,
                 unit(minus(body.corners[edge.corners[1]], body.corners[edge.corners[0]])));
    }
    return outline;
}

Outline outline_of(const Triangle& t) {
    Outline outline{.corners = t};
    for (std::size_t k = 0; k < 3; ++k) {
        const Vector along = minus(t[(k + 1) % 3], t[k]);
        if (length_of(along) > 0.0) add_once(outline.edges, unit(along));
    }
    const Vector normal = cross(minus(t[1], t[0]), minus(t[2], t[0]));
    if (length_of(normal) > 0.0) outline.normals.push_back(unit(normal));
    return outline;
}

// Calls `visit` with each direction in which the two may be told apart, until it says false.
template <class Visit>
void for_each_axis(const Outline& a, const Outline& b, Visit visit) {
    for (const auto* outline : {&a, &b}) {
        for (const auto& normal : outline->normals) {
            if (!visit(normal)) return;
        }
    }
    for (const auto& along : a.edges) {
        for (const auto& other : b.edges) {
            const Vector axis = cross(along, other);
            const double length = length_of(axis);
            // Edges that lie along each other give no direction of their own.
            if (length < 1e-9) continue;
            if (!visit(scaled(axis, 1.0 / length))) return;
        }
    }
}

struct Shadow {
    double least = std::numeric_limits<double>::max();
    double most = std::numeric_limits<double>::lowest();
};

Shadow shadow_of(const Outline& outline, const Vector& along) {
    Shadow shadow;
    for (const auto& corner : outline.corners) {
        const double at = dot(corner, along);
        shadow.least = std::min(shadow.least, at);
        shadow.most = std::max(shadow.most, at);
    }
    return shadow;
}

// The differences of the points of two bodies are a convex body, too; a straight way through it is
// cut out by the planes of its faces.
std::optional<Passage> passage(const Outline& a, const Outline& b, const Vector& direction) {
    constexpr double is_across = 1e-12;
    std::optional<Passage> all =
        Passage{std::numeric_limits<double>::lowest(), std::numeric_limits<double>::max()};
    for_each_axis(a, b, [&](const Vector& axis) {
        const Shadow of_a = shadow_of(a, axis);
        const Shadow of_b = shadow_of(b, axis);
        const double pace = dot(axis, direction);
        const double until_touch = of_b.least - of_a.most;
        const double until_past = of_b.most - of_a.least;
        if (std::abs(pace) < is_across) {
            if (until_touch >= -grazing || until_past <= grazing) all.reset();
        } else {
            all->from = std::max(all->from, std::min(until_touch / pace, until_past / pace));
            all->to = std::min(all->to, std::max(until_touch / pace, until_past / pace));
            if (all->from >= all->to) all.reset();
        }
        return all.has_value();
    });
    return all;
}

}  // namespace

Overlap overlap(const ConvexBody& a, const ConvexBody& b) {
    if (!touches(a.bounds, b.bounds)) return {};
    const Outline outline = outline_of(a);
    const Outline other = outline_of(b);
    Overlap least{.depth = std::numeric_limits<double>::max()};
    for_each_axis(outline, other, [&](const Vector& axis) {
        const Shadow of_a = shadow_of(outline, axis);
        const Shadow of_b = shadow_of(other, axis);
        const double along = of_b.most - of_a.least;
        const double against = of_a.most - of_b.least;
        if (along <= 0.0 || against <= 0.0) {
            least = {};
            return false;
        }
        if (along < least.depth) least = {along, axis};
        if (against < least.depth) least = {against, scaled(axis, -1.0)};
        return true;
    });
    return least;
}

std::optional<Passage> passage(const ConvexBody& a, const ConvexBody& b, const Vector& direction) {
    return passage(outline_of(a), outline_of(b), direction);
}

std::optional<Passage> passage(const ConvexBody& a, const Triangle& b, const Vector& direction) {
    return passage(outline_of(a), outline_of(b), direction);
}

double shift_to_clear(const ConvexBody& a, const ConvexBody& b, const Vector& direction) {
    if (!touches(a.bounds, b.bounds)) return 0.0;
    const auto through = passage(a, b, direction);
    return through && through->from < 0.0 && through->to > 0.0 ? through->to : 0.0;
}

}  // namespace engine
