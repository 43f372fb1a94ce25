#include "model/room/wall_lean.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace model {
namespace {

using Polygon = std::vector<engine::Vector>;

// What of the polygon lies on the side of `limit` along the axis to which `sense` points.
Polygon clipped(const Polygon& polygon, std::size_t axis, double limit, double sense) {
    Polygon kept;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const auto& from = polygon[i];
        const auto& to = polygon[(i + 1) % polygon.size()];
        const double before = (from[axis] - limit) * sense;
        const double after = (to[axis] - limit) * sense;
        if (before >= 0.0) kept.push_back(from);
        if ((before < 0.0) == (after < 0.0)) continue;
        const double part = before / (before - after);
        engine::Vector crossing{};
        for (std::size_t k = 0; k < 3; ++k) crossing[k] = from[k] + part * (to[k] - from[k]);
        crossing[axis] = limit;
        kept.push_back(crossing);
    }
    return kept;
}

// A place on the wall: how high above the foot, and how far in.
struct WallPlace {
    double up = 0.0;
    double in = 0.0;
};

std::vector<WallPlace> places_in(std::span<const engine::Prism> bodies,
                                 Sense inside,
                                 const Stretch& stretch) {
    std::vector<WallPlace> places;
    for (const auto& body : bodies) {
        Polygon surface = body.near;
        surface = clipped(surface, 1, stretch.along[0], 1.0);
        surface = clipped(surface, 1, stretch.along[1], -1.0);
        surface = clipped(surface, 2, stretch.up[0], 1.0);
        surface = clipped(surface, 2, stretch.up[1], -1.0);
        for (const auto& corner : surface) {
            places.push_back(
                {corner[2] - stretch.up[0], corner[0] * static_cast<double>(sign_of(inside))});
        }
    }
    return places;
}

}  // namespace

double wall_lean(std::span<const engine::Prism> bodies, Sense inside, const Stretch& stretch) {
    const auto places = places_in(bodies, inside, stretch);
    constexpr double level = 1e-6;
    const auto is_at_foot = [&](const WallPlace& place) { return place.up < level; };
    double foot = 0.0;
    bool has_foot = false;
    for (const auto& place : places) {
        if (!is_at_foot(place)) continue;
        foot = has_foot ? std::max(foot, place.in) : place.in;
        has_foot = true;
    }
    if (!has_foot) return 0.0;
    double lean = 0.0;
    for (const auto& place : places) {
        if (is_at_foot(place)) continue;
        lean = std::max(lean, (place.in - foot) / place.up * (stretch.up[1] - stretch.up[0]));
    }
    return lean;
}

}  // namespace model
