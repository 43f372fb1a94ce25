#include "engine/geometry/convex_overlap.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <array>
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

// The same of a body and of a triangle.
struct Seen {
    std::span<const Vector> corners;
    std::span<const Vector> normals;
    std::span<const Vector> edges;
};

Seen seen(const Facets& body) { return {body.corners, body.normals, body.edges}; }

class SeenTriangle {
public:
    explicit SeenTriangle(const Triangle& t) : corners_{t} {
        for (std::size_t k = 0; k < 3; ++k) {
            const Vector along = minus(t[(k + 1) % 3], t[k]);
            if (const double length = length_of(along); length > 0.0)
                edges_[edge_count_++] = scaled(along, 1.0 / length);
        }
        const Vector normal = cross(minus(t[1], t[0]), minus(t[2], t[0]));
        has_area_ = length_of(normal) > 0.0;
        if (has_area_) normal_ = unit(normal);
    }

    Seen seen() const {
        return {corners_,
                {&normal_, has_area_ ? std::size_t{1} : std::size_t{0}},
                {edges_.data(), edge_count_}};
    }

private:
    const Triangle& corners_;
    Vector normal_{};
    std::array<Vector, 3> edges_{};
    std::size_t edge_count_ = 0;
    bool has_area_ = false;
};

// Calls `visit` with each direction in which the two may be told apart, until it says false.
template <class Visit>
void for_each_axis(const Seen& a, const Seen& b, Visit visit) {
    for (const auto* one : {&a, &b}) {
        for (const auto& normal : one->normals) {
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

Shadow shadow_of(const Seen& seen, const Vector& along) {
    Shadow shadow;
    for (const auto& corner : seen.corners) {
        const double at = dot(corner, along);
        shadow.least = std::min(shadow.least, at);
        shadow.most = std::max(shadow.most, at);
    }
    return shadow;
}

// The differences of the points of two bodies are a convex body, too; a straight way through it is
// cut out by the planes of its faces.
std::optional<Passage> passage_of(const Seen& a, const Seen& b, const Vector& direction) {
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

bool lies_deeper(const ConvexBody& body, const Vector& at, double depth) {
    return std::ranges::all_of(body.faces,
                               [&](const auto& face) { return height_above(face, at) < -depth; });
}

// Some point of one, its middle or a corner, that lies so deep in the other.
bool has_point_deeper(const ConvexBody& one, const ConvexBody& in, double depth) {
    return lies_deeper(in, one.around.centre, depth) ||
           std::ranges::any_of(
               one.corners, [&](const Vector& corner) { return lies_deeper(in, corner, depth); });
}

}  // namespace

bool is_deeper(const ConvexBody& a, const ConvexBody& b, double depth) {
    if (!touches(a.bounds, b.bounds)) return false;
    if (has_point_deeper(a, b, depth) || has_point_deeper(b, a, depth)) return true;
    return overlap(a, b).depth > depth;
}

Facets facets_of(const ConvexBody& body) {
    Facets facets{.corners = body.corners, .bounds = body.bounds};
    for (const auto& face : body.faces) add_once(facets.normals, face.normal);
    for (const auto& edge : body.edges) {
        add_once(facets.edges,
                 unit(minus(body.corners[edge.corners[1]], body.corners[edge.corners[0]])));
    }
    return facets;
}

std::vector<Facets> facets_of(std::span<const ConvexBody> bodies) {
    std::vector<Facets> all;
    all.reserve(bodies.size());
    for (const auto& body : bodies) all.push_back(facets_of(body));
    return all;
}

Overlap overlap(const ConvexBody& a, const ConvexBody& b) {
    if (!touches(a.bounds, b.bounds)) return {};
    const Facets facets = facets_of(a);
    const Facets others = facets_of(b);
    const Seen one = seen(facets);
    const Seen other = seen(others);
    Overlap least{.depth = std::numeric_limits<double>::max()};
    for_each_axis(one, other, [&](const Vector& axis) {
        const Shadow of_a = shadow_of(one, axis);
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

std::optional<Passage> passage(const Facets& a, const Facets& b, const Vector& direction) {
    return passage_of(seen(a), seen(b), direction);
}

std::optional<Passage> passage(const Facets& a, const Triangle& b, const Vector& direction) {
    return passage_of(seen(a), SeenTriangle(b).seen(), direction);
}

std::optional<Passage> passage(const ConvexBody& a, const ConvexBody& b, const Vector& direction) {
    return passage(facets_of(a), facets_of(b), direction);
}

std::optional<Passage> passage(const ConvexBody& a, const Triangle& b, const Vector& direction) {
    return passage(facets_of(a), b, direction);
}

Bounds swept(const Bounds& bounds, const Vector& direction, double from, double to) {
    Bounds all;
    for (const double by : {from, to}) {
        const Vector off = scaled(direction, by);
        put_in(all, Bounds{plus(bounds.lo, off), plus(bounds.hi, off)});
    }
    return all;
}

double end_of_blocked(std::vector<Passage>& blocked, double at) {
    std::ranges::sort(blocked, {}, &Passage::from);
    for (const auto& passage : blocked) {
        if (passage.from >= at) break;
        at = std::max(at, passage.to);
    }
    return at;
}

double shift_to_clear(const ConvexBody& a, const ConvexBody& b, const Vector& direction) {
    if (!touches(a.bounds, b.bounds)) return 0.0;
    const auto through = passage(a, b, direction);
    return through && through->from < 0.0 && through->to > 0.0 ? through->to : 0.0;
}

std::optional<double> shift_to_clear(std::span<const Facets> things,
                                     std::span<const Facets> others,
                                     const Vector& direction,
                                     double most) {
    std::vector<Passage> blocked;
    for (const auto& thing : things) {
        const Bounds way = swept(thing.bounds, direction, 0.0, most);
        for (const auto& other : others) {
            if (!touches(way, other.bounds)) continue;
            const auto through = passage(thing, other, direction);
            if (through && through->to > 0.0) blocked.push_back(*through);
        }
    }
    const double end = end_of_blocked(blocked, 0.0);
    return end <= most ? std::optional{end} : std::nullopt;
}

}  // namespace engine
