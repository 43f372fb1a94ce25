#include "engine/geometry/convex.h"

#include "engine/geometry/vectors.h"

#include <algorithm>
#include <limits>

namespace engine {
namespace {

std::vector<Vector> edges_of(const Prism& prism) {
    std::vector<Vector> edges;
    const std::size_t n = prism.near.size();
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t next = (i + 1) % n;
        edges.push_back(unit(minus(prism.near[next], prism.near[i])));
        edges.push_back(unit(minus(prism.far[next], prism.far[i])));
        edges.push_back(unit(minus(prism.far[i], prism.near[i])));
    }
    return edges;
}

std::vector<Vector> normals_of(const Prism& prism) {
    std::vector<Vector> normals;
    const std::size_t n = prism.near.size();
    const auto of_face = [&](const std::vector<Vector>& face) {
        normals.push_back(cross(minus(face[1], face[0]), minus(face[2], face[0])));
    };
    of_face(prism.near);
    of_face(prism.far);
    for (std::size_t i = 0; i < n; ++i) {
        normals.push_back(cross(minus(prism.near[(i + 1) % n], prism.near[i]),
                                minus(prism.far[i], prism.near[i])));
    }
    return normals;
}

struct Shadow {
    double least = std::numeric_limits<double>::max();
    double most = std::numeric_limits<double>::lowest();
};

Shadow shadow_of(const Prism& prism, const Vector& along) {
    Shadow shadow;
    for (const auto* face : {&prism.near, &prism.far}) {
        for (const auto& corner : *face) {
            const double at = dot(corner, along);
            shadow.least = std::min(shadow.least, at);
            shadow.most = std::max(shadow.most, at);
        }
    }
    return shadow;
}

double overlap_along(const Prism& a, const Prism& b, const Vector& along) {
    const Shadow of_a = shadow_of(a, along);
    const Shadow of_b = shadow_of(b, along);
    return std::min(of_a.most - of_b.least, of_b.most - of_a.least);
}

}  // namespace

double depth_of_overlap(const Prism& a, const Prism& b) {
    std::vector<Vector> axes = normals_of(a);
    const auto of_b = normals_of(b);
    axes.insert(axes.end(), of_b.begin(), of_b.end());
    for (const auto& edge : edges_of(a)) {
        for (const auto& other : edges_of(b)) axes.push_back(cross(edge, other));
    }
    double depth = std::numeric_limits<double>::max();
    for (const auto& axis : axes) {
        const double length = length_of(axis);
        // Edges that lie along each other give no direction of their own.
        if (length < 1e-9) continue;
        const double overlap = overlap_along(a, b, scaled(axis, 1.0 / length));
        if (overlap <= 0.0) return 0.0;
        depth = std::min(depth, overlap);
    }
    return depth;
}

}  // namespace engine
