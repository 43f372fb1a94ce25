// A mesh of triangles that answers what is nearest, what touches and what a ray meets, without
// looking at all of them: a tree of boxes over them.
#pragma once

#include "engine/geometry/bounds.h"
#include "engine/geometry/convex_body.h"
#include "engine/geometry/nearest_points.h"

#include <array>
#include <cassert>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace engine {

// Where a body, or one of a group, comes nearest to a mesh. 0: the triangle touches or crosses the
// body or lies within it, and both points are one that they share. mm.
struct NearestTriangle {
    double distance = 0.0;
    Vector on_body{};
    Vector on_mesh{};
    std::uint32_t triangle = 0;
    std::uint32_t body = 0;  // its place in the group
};

struct RayHit {
    double distance = 0.0;  // in lengths of the ray's direction
    Vector point{};
    std::uint32_t triangle = 0;
};

// Once built it is only read: any number of threads may ask at the same time.
class TriangleTree {
public:
    using Corners = std::array<std::uint32_t, 3>;       // places of points, each below their count
    using Progress = std::function<bool(double done)>;  // 0 to 1; answers false to stop

    TriangleTree() = default;

    // Points in mm, finite. Both are copied; a triangle keeps its place in `triangles` as its
    // number. Triangles without area count as the line or the point that they are. n log n.
    TriangleTree(std::span<const Vector> points, std::span<const Corners> triangles);

    // Nothing if `progress` says to stop.
    static std::optional<TriangleTree> built(std::span<const Vector> points,
                                             std::span<const Corners> triangles,
                                             const Progress& progress);
    static std::optional<TriangleTree> built(std::span<const std::array<float, 3>> points,
                                             std::span<const Corners> triangles,
                                             const Progress& progress);

    std::size_t triangle_count() const { return leaves_.size(); }
    bool is_empty() const { return leaves_.empty(); }
    const Bounds& bounds() const { return bounds_; }  // hold nothing when there are no triangles

    // Exact. Nothing if no triangle is within `cut_off` of a body, mm.
    std::optional<NearestTriangle> nearest(const ConvexBody& body,
                                           double cut_off = without_limit) const;
    std::optional<NearestTriangle> nearest(std::span<const ConvexBody> bodies,
                                           double cut_off = without_limit) const;

    // Whether a triangle touches the body, crosses it or lies within.
    bool crosses(const ConvexBody& body) const;

    // How far bodies have to be moved together along `direction` (unit) until no triangle crosses
    // one, mm; 0 when none does now. Nothing if that takes more than `most`.
    std::optional<double> shift_to_clear(std::span<const ConvexBody> bodies,
                                         const Vector& direction,
                                         double most) const;

    // How far bodies can be moved together along `direction` (unit) before a triangle would cross
    // one, mm, at most `most`. 0 when one does now.
    double free_way(std::span<const ConvexBody> bodies, const Vector& direction, double most) const;

    // The first triangle on the ray, from either side, up to `most` lengths of `direction` away.
    std::optional<RayHit> first_on_ray(const Vector& from,
                                       const Vector& direction,
                                       double most = without_limit) const;

    // Calls visit(number, corners) for each triangle whose own bounds share a point with `box`, in
    // no fixed order.
    template <class Visit>
    void for_each_touching(const Bounds& box, Visit visit) const {
        if (!nodes_.empty()) descend(0, box, visit);
    }

    static constexpr double without_limit = std::numeric_limits<double>::infinity();

private:
    // Rounded outward to floats. 32 bytes: two children share a line of the cache.
    struct Node {
        std::array<float, 3> lo{};
        std::array<float, 3> hi{};
        std::uint32_t first = 0;  // of its leaves, or of its two child nodes
        std::uint32_t count = 0;  // 0: an inner node whose children are first and first + 1
    };
    struct Leaf {
        Corners corners{};
        std::uint32_t number = 0;
    };
    class Builder;
    class Search;

    Triangle corners_of(const Leaf& leaf) const {
        return {points_[leaf.corners[0]], points_[leaf.corners[1]], points_[leaf.corners[2]]};
    }

    static bool touches_node(const Node& node, const Bounds& box) {
        for (std::size_t i = 0; i < 3; ++i) {
            if (static_cast<double>(node.lo[i]) > box.hi[i] ||
                static_cast<double>(node.hi[i]) < box.lo[i])
                return false;
        }
        return true;
    }

    template <class Visit>
    void descend(std::uint32_t at, const Bounds& box, Visit& visit) const {
        const Node& node = nodes_[at];
        if (!touches_node(node, box)) return;
        if (node.count == 0) {
            descend(node.first, box, visit);
            descend(node.first + 1, box, visit);
            return;
        }
        for (std::uint32_t i = node.first; i < node.first + node.count; ++i) {
            const Triangle corners = corners_of(leaves_[i]);
            Bounds own;
            for (const auto& corner : corners) put_in(own, corner);
            if (touches(own, box)) visit(leaves_[i].number, corners);
        }
    }

    std::vector<Vector> points_;  // in the order in which leaves name them
    std::vector<Leaf> leaves_;    // neighbours in space are neighbours here
    std::vector<Node> nodes_;
    Bounds bounds_;
};

}  // namespace engine
