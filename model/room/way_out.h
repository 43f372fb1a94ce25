// How a thing that stands in an obstacle gets out of it.
#pragma once

#include "engine/geometry/convex_body.h"
#include "engine/geometry/convex_overlap.h"
#include "model/room/clearance.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace model {

struct WayOut {
    double depth = 0.0;   // mm, free when moved so far
    std::size_t way = 0;  // in RoomObstacle::ways
};

// Unit, along an axis of the room.
engine::Vector direction_of(std::size_t way);

// The direction in the axes of a placement.
engine::Vector own_direction(const engine::Placement& place, const engine::Vector& in_room);

// Out of the box round an obstacle, so never less than out of the obstacle itself. At least one of
// the obstacle's ways leads out.
WayOut way_out_of_bounds(const RoomObstacle& obstacle, const engine::Bounds& thing);

// Of one obstacle, for many things in it.
class WaysOut {
public:
    explicit WaysOut(const RoomObstacle& obstacle);

    // The shortest way; `first` is tried first, and no other if that takes no more than `enough`.
    // `thing` are bodies in the obstacle's own axes: those of a scan, or the room's. `known` where
    // nothing is shorter.
    WayOut shortest(std::span<const engine::ConvexBody> thing,
                    const WayOut& known,
                    std::size_t first,
                    double enough) const;

private:
    std::optional<double> shift(std::span<const engine::ConvexBody> thing,
                                std::span<const engine::Facets> facets,
                                std::size_t way,
                                double most) const;

    const RoomObstacle& obstacle_;
    std::vector<engine::Facets> facets_;  // of its bodies
};

}  // namespace model
