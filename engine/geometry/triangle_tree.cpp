#include "engine/geometry/triangle_tree.h"

#include "engine/geometry/convex_distance.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace engine {
namespace {

// A way down the tree; trees are at most 48 + 32 deep.
template <class Entry>
class Stack {
public:
    bool is_empty() const { return size_ == 0; }
    void push(const Entry& entry) {
        assert(size_ < entries_.size());
        entries_[size_++] = entry;
    }
    Entry pop() { return entries_[--size_]; }

private:
    std::array<Entry, 96> entries_;
    std::size_t size_ = 0;
};

}  // namespace

// Looks for what is nearer than `best_`, one body after the other.
class TriangleTree::Search {
public:
    Search(const TriangleTree& tree, double cut_off) : tree_{tree} {
        best_.squared = std::nextafter(cut_off * cut_off, std::numeric_limits<double>::infinity());
        limit_ = beyond_rounding(best_.squared);
    }

    void look_at(const ConvexBody& body, std::uint32_t number) {
        body_ = &body;
        if (found_) see_from_best();
        for (std::size_t k = 0; k < 3; ++k)
            for (std::size_t i = 0; i < 3; ++i) steep_[k][i] = std::abs(body.around.axes[k][i]);
        Stack<Reached> ways;
        ways.push({squared_bound(0), 0});
        while (!ways.is_empty() && best_.squared > 0.0) {
            const Reached way = ways.pop();
            if (way.squared >= limit_) continue;
            const Node& node = tree_.nodes_[way.node];
            if (node.count > 0) {
                look_at_leaves(node, number);
                continue;
            }
            Reached nearer{squared_bound(node.first), node.first};
            Reached other{squared_bound(node.first + 1), node.first + 1};
            if (is_nearer(other, nearer)) std::swap(nearer, other);
            if (other.squared < limit_) ways.push(other);
            if (nearer.squared < limit_) ways.push(nearer);
        }
    }

    std::optional<NearestTriangle> found() const { return found_; }
    bool touches() const { return best_.squared <= 0.0; }

private:
    struct Reached {
        double squared;  // no triangle in the node is nearer
        std::uint32_t node;
    };

    // Of two nodes that both reach the body that with its middle closer to the body's.
    bool is_nearer(const Reached& one, const Reached& other) const {
        if (one.squared != other.squared) return one.squared < other.squared;
        return squared_from_middle(one.node) < squared_from_middle(other.node);
    }

    double squared_from_middle(std::uint32_t at) const {
        const Node& node = tree_.nodes_[at];
        double squared = 0.0;
        for (std::size_t i = 0; i < 3; ++i) {
            const double twice = static_cast<double>(node.lo[i]) + static_cast<double>(node.hi[i]);
            const double off = twice / 2.0 - body_->around.centre[i];
            squared += off * off;
        }
        return squared;
    }

    // Along the axes of the world, then away from the best pair, then along the axes of the body:
    // the cheaper first.
    double squared_bound(std::uint32_t at) const {
        const Node& node = tree_.nodes_[at];
        Vector centre{};
        Vector half{};
        double squared = 0.0;
        for (std::size_t i = 0; i < 3; ++i) {
            const double lo = static_cast<double>(node.lo[i]);
            const double hi = static_cast<double>(node.hi[i]);
            centre[i] = (lo + hi) / 2.0;
            half[i] = (hi - lo) / 2.0;
            const double gap = std::max({0.0, lo - body_->bounds.hi[i], body_->bounds.lo[i] - hi});
            squared += gap * gap;
        }
        if (squared >= limit_) return squared;
        if (found_) {
            const double gap = dot(away_, centre) - dot(away_steep_, half) - reach_;
            if (gap > 0.0) squared = std::max(squared, gap * gap);
            if (squared >= limit_) return squared;
        }
        if (body_->is_along_axes) return squared;
        return std::max(squared, bound_from_body(centre, half));
    }

    double bound_from_body(const Vector& centre, const Vector& half) const {
        const OrientedBox& around = body_->around;
        const Vector off = minus(centre, around.centre);
        double squared = 0.0;
        for (std::size_t k = 0; k < 3; ++k) {
            const double gap =
                std::abs(dot(around.axes[k], off)) - dot(steep_[k], half) - around.half[k];
            if (gap > 0.0) squared += gap * gap;
        }
        return squared;
    }

    void look_at_leaves(const Node& node, std::uint32_t number) {
        for (std::uint32_t i = node.first; i < node.first + node.count; ++i) {
            const Leaf& leaf = tree_.leaves_[i];
            const Triangle triangle = tree_.corners_of(leaf);
            if (found_ && is_beyond_best(triangle)) continue;
            if (!bring_nearer(best_, *body_, triangle)) continue;
            found_ = NearestTriangle{std::sqrt(best_.squared), best_.on_first, best_.on_second,
                                     leaf.number, number};
            see_from_best();
        }
    }

    bool is_beyond_best(const Triangle& t) const {
        const double gap =
            std::min({dot(away_, t[0]), dot(away_, t[1]), dot(away_, t[2])}) - reach_;
        return gap > 0.0 && gap * gap >= limit_;
    }

    // The direction in which the best pair was found tells many others off.
    void see_from_best() {
        limit_ = beyond_rounding(best_.squared);
        away_ = unit(minus(best_.on_second, best_.on_first));
        for (std::size_t i = 0; i < 3; ++i) away_steep_[i] = std::abs(away_[i]);
        reach_ = dot(away_, furthest_corner(*body_, away_));
    }

    const TriangleTree& tree_;
    const ConvexBody* body_ = nullptr;
    std::array<Vector, 3> steep_{};
    Vector away_{};
    Vector away_steep_{};  // its parts, all positive
    double reach_ = 0.0;
    ClosePair best_;
    double limit_ = 0.0;  // a node or triangle beyond it is passed over
    std::optional<NearestTriangle> found_;
};

std::optional<NearestTriangle> TriangleTree::nearest(const ConvexBody& body, double cut_off) const {
    return nearest(std::span(&body, 1), cut_off);
}

std::optional<NearestTriangle> TriangleTree::nearest(std::span<const ConvexBody> bodies,
                                                     double cut_off) const {
    if (is_empty()) return std::nullopt;
    Search search(*this, cut_off);
    for (std::uint32_t i = 0; i < bodies.size() && !search.touches(); ++i)
        search.look_at(bodies[i], i);
    return search.found();
}

bool TriangleTree::crosses(const ConvexBody& body) const { return nearest(body, 0.0).has_value(); }

namespace {

// Moeller and Trumbore, Fast Minimum Storage Ray/Triangle Intersection, 1997; from memory.
std::optional<double> met_at(const Triangle& t, const Vector& from, const Vector& direction) {
    const Vector first = minus(t[1], t[0]);
    const Vector second = minus(t[2], t[0]);
    const Vector across = cross(direction, second);
    const double volume = dot(first, across);
    if (volume == 0.0) return std::nullopt;
    const Vector off = minus(from, t[0]);
    const double u = dot(off, across) / volume;
    if (!(u >= 0.0 && u <= 1.0)) return std::nullopt;
    const Vector turned = cross(off, first);
    const double v = dot(direction, turned) / volume;
    if (!(v >= 0.0 && u + v <= 1.0)) return std::nullopt;
    return dot(second, turned) / volume;
}

}  // namespace

std::optional<RayHit> TriangleTree::first_on_ray(const Vector& from,
                                                 const Vector& direction,
                                                 double most) const {
    if (is_empty()) return std::nullopt;
    std::optional<RayHit> hit;
    double nearest_yet = most;
    const auto enters = [&](std::uint32_t at) {
        const Node& node = nodes_[at];
        double in = 0.0;
        double out = nearest_yet;
        for (std::size_t i = 0; i < 3; ++i) {
            const double lo = static_cast<double>(node.lo[i]) - from[i];
            const double hi = static_cast<double>(node.hi[i]) - from[i];
            if (direction[i] == 0.0) {
                if (lo > 0.0 || hi < 0.0) return without_limit;
                continue;
            }
            const double a = lo / direction[i];
            const double b = hi / direction[i];
            in = std::max(in, std::min(a, b));
            out = std::min(out, std::max(a, b));
        }
        return in <= out ? in : without_limit;
    };
    struct Reached {
        double in = 0.0;
        std::uint32_t node = 0;
    };
    Stack<Reached> ways;
    ways.push({enters(0), 0});
    while (!ways.is_empty()) {
        const Reached way = ways.pop();
        if (!(way.in < without_limit) || way.in > nearest_yet) continue;
        const Node& node = nodes_[way.node];
        if (node.count == 0) {
            const Reached one{enters(node.first), node.first};
            const Reached other{enters(node.first + 1), node.first + 1};
            ways.push(one.in <= other.in ? other : one);
            ways.push(one.in <= other.in ? one : other);
            continue;
        }
        for (std::uint32_t i = node.first; i < node.first + node.count; ++i) {
            const auto at = met_at(corners_of(leaves_[i]), from, direction);
            if (!at || *at < 0.0 || *at > nearest_yet) continue;
            if (hit && *at == nearest_yet) continue;
            nearest_yet = *at;
            hit = RayHit{*at, plus(from, scaled(direction, *at)), leaves_[i].number};
        }
    }
    return hit;
}

}  // namespace engine
