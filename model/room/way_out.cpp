#include "model/room/way_out.h"

#include "engine/geometry/vectors.h"
#include "model/room/scan_side.h"

#include <limits>
#include <utility>

namespace model {

using engine::ConvexBody;
using engine::Vector;

namespace {

// What is clear of the surface may be wholly inside then, and has to go on to the far side of it.
std::optional<double> shift_out(const Scan& scan,
                                std::span<const ConvexBody> thing,
                                const Vector& direction,
                                double most) {
    double all = 0.0;
    std::vector<ConvexBody> moved(thing.begin(), thing.end());
    const auto move = [&](double by) {
        all += by;
        for (auto& body : moved)
            body = engine::moved(std::move(body), engine::scaled(direction, by));
    };
    while (all <= most) {
        const auto clear = scan.tree.shift_to_clear(moved, direction, most - all);
        if (!clear) return std::nullopt;
        move(*clear);
        if (!is_inside(scan, moved.front().around.centre)) return all;
        constexpr double into_it = 1e-3;
        move(scan.tree.free_way(moved, direction, most - all) + into_it);
    }
    return std::nullopt;
}

}  // namespace

Vector direction_of(std::size_t way) {
    Vector direction{};
    direction[way / 2] = way % 2 == 0 ? -1.0 : 1.0;
    return direction;
}

Vector own_direction(const engine::Placement& place, const Vector& in_room) {
    return {engine::dot(place.x, in_room), engine::dot(place.y, in_room),
            engine::dot(place.z, in_room)};
}

WayOut way_out_of_bounds(const RoomObstacle& obstacle, const engine::Bounds& thing) {
    WayOut out{.depth = std::numeric_limits<double>::max()};
    for (std::size_t way = 0; way < obstacle.ways.size(); ++way) {
        if (!obstacle.ways[way]) continue;
        const std::size_t axis = way / 2;
        const double depth = way % 2 == 0 ? thing.hi[axis] - obstacle.bounds.lo[axis]
                                          : obstacle.bounds.hi[axis] - thing.lo[axis];
        if (depth < out.depth) out = {depth, way};
    }
    return out;
}

WaysOut::WaysOut(const RoomObstacle& obstacle)
    : obstacle_{obstacle}, facets_{engine::facets_of(obstacle.bodies)} {}

std::optional<double> WaysOut::shift(std::span<const ConvexBody> thing,
                                     std::span<const engine::Facets> facets,
                                     std::size_t way,
                                     double most) const {
    const Vector direction = direction_of(way);
    if (!obstacle_.scan) return engine::shift_to_clear(facets, facets_, direction, most);
    return shift_out(*obstacle_.scan, thing, own_direction(obstacle_.scan_place, direction), most);
}

WayOut WaysOut::shortest(std::span<const ConvexBody> thing,
                         const WayOut& known,
                         std::size_t first,
                         double enough) const {
    WayOut best = known;
    if (thing.empty()) return best;
    const auto facets = engine::facets_of(thing);
    const auto look = [&](std::size_t way) {
        if (!obstacle_.ways[way]) return;
        const auto needed = shift(thing, facets, way, best.depth);
        if (needed && *needed < best.depth) best = {*needed, way};
    };
    look(first);
    for (std::size_t way = 0; way < obstacle_.ways.size() && best.depth > enough; ++way) {
        if (way != first) look(way);
    }
    return best;
}

}  // namespace model
