// Proof that a distance is the least one: the two points lie on the two things, so the least is no
// more; and a slab of that width lies between the two and holds nothing of either, so it is no
// less. It knows nothing of how the distance was found.
#pragma once

#include "engine/geometry/convex_body.h"
#include "engine/geometry/vectors.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <vector>

namespace tests {

inline bool holds(const engine::ConvexBody& body, const engine::Vector& at, double within) {
    return std::ranges::all_of(body.faces, [&](const engine::BodyFace& face) {
        return engine::height_above(face, at) <= within;
    });
}

// Of the areas that a point makes with the sides: their sum is the triangle's only if it lies in
// it.
inline bool holds(const std::array<engine::Vector, 3>& t, const engine::Vector& at, double within) {
    double areas = 0.0;
    double round = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto& from = t[k];
        const auto& to = t[(k + 1) % 3];
        areas += engine::length_of(engine::cross(engine::minus(from, at), engine::minus(to, at)));
        round += engine::length_of(engine::minus(to, from));
    }
    const double own =
        engine::length_of(engine::cross(engine::minus(t[1], t[0]), engine::minus(t[2], t[0])));
    return areas - own <= within * round;
}

inline std::span<const engine::Vector> corners_of(const engine::ConvexBody& body) {
    return body.corners;
}

inline std::span<const engine::Vector> corners_of(const std::array<engine::Vector, 3>& triangle) {
    return triangle;
}

inline std::vector<engine::Vector> edges_of(const engine::ConvexBody& body) {
    std::vector<engine::Vector> edges;
    for (const auto& edge : body.edges)
        edges.push_back(
            engine::minus(body.corners[edge.corners[1]], body.corners[edge.corners[0]]));
    return edges;
}

inline std::vector<engine::Vector> edges_of(const std::array<engine::Vector, 3>& t) {
    return {engine::minus(t[1], t[0]), engine::minus(t[2], t[1]), engine::minus(t[0], t[2])};
}

inline std::vector<engine::Vector> normals_of(const engine::ConvexBody& body) {
    std::vector<engine::Vector> normals;
    for (const auto& face : body.faces) normals.push_back(face.normal);
    return normals;
}

inline std::vector<engine::Vector> normals_of(const std::array<engine::Vector, 3>& t) {
    return {engine::cross(engine::minus(t[1], t[0]), engine::minus(t[2], t[0]))};
}

// The width of the empty slab at right angles to a direction; below 0 there is none.
template <class First, class Second>
double slab_between(const First& first, const Second& second, const engine::Vector& direction) {
    const auto across = [&](const engine::Vector& away) {
        double most = std::numeric_limits<double>::lowest();
        double least = std::numeric_limits<double>::max();
        const auto& origin = corners_of(first)[0];
        for (const auto& at : corners_of(first))
            most = std::max(most, engine::dot(away, engine::minus(at, origin)));
        for (const auto& at : corners_of(second))
            least = std::min(least, engine::dot(away, engine::minus(at, origin)));
        return least - most;
    };
    const auto away = engine::unit(direction);
    return std::max(across(away), across(engine::scaled(away, -1.0)));
}

// Points close to each other give their direction only roughly: then a normal or two edges may
// give the slab.
template <class First, class Second>
bool is_slab_between(const First& first,
                     const Second& second,
                     const engine::Vector& direction,
                     double width) {
    if (slab_between(first, second, direction) >= width) return true;
    auto directions = normals_of(first);
    for (const auto& normal : normals_of(second)) directions.push_back(normal);
    for (const auto& one : edges_of(first))
        for (const auto& other : edges_of(second)) directions.push_back(engine::cross(one, other));
    return std::ranges::any_of(directions, [&](const engine::Vector& along) {
        return engine::length_of(along) > 0.0 && slab_between(first, second, along) >= width;
    });
}

// `within`: how far rounding may carry, mm.
template <class First, class Second>
bool is_least_distance(double distance,
                       const engine::Vector& on_first,
                       const engine::Vector& on_second,
                       const First& first,
                       const Second& second,
                       double within) {
    const auto between = engine::minus(on_second, on_first);
    if (std::abs(engine::length_of(between) - distance) > within) return false;
    if (!holds(first, on_first, within) || !holds(second, on_second, within)) return false;
    return distance <= within || is_slab_between(first, second, between, distance - within);
}

}  // namespace tests
