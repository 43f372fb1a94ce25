#include "model/resolve/lap_room.h"

#include <algorithm>

namespace model {
namespace {

// A box's outline in the lap's own coordinates.
Region seen_in(const LapAxes& axes, const Box& box) {
    Region region;
    for (std::size_t k = 0; k < 2; ++k) {
        const std::size_t i = axes.axis[k];
        const Nm p = axes.sense[k] * (box.lo[i] - axes.heel[i]);
        const Nm q = axes.sense[k] * (box.hi[i] - axes.heel[i]);
        region.lo[k] = std::min(p, q);
        region.hi[k] = std::max(p, q);
    }
    return region;
}

Region grown(Region region, Nm by) {
    for (std::size_t k = 0; k < 2; ++k) {
        region.lo[k] -= by;
        region.hi[k] += by;
    }
    return region;
}

bool overlap(const Region& a, const Region& b) {
    return a.lo[0] < b.hi[0] && b.lo[0] < a.hi[0] && a.lo[1] < b.hi[1] && b.lo[1] < a.hi[1];
}

// Which way a piece extends from its datum along an axis.
int sense_along(const Piece& piece, std::size_t axis) {
    if (index_of(piece.run) == axis) return piece.run_sense;
    return index_of(piece.a_axis) == axis ? piece.a_sense : piece.b_sense;
}

bool has_gauge_along(const Piece& piece, std::size_t axis) {
    return piece.stock != no_index && index_of(piece.run) != axis;
}

// The widest of the clear spaces that the heights [least, most] beyond the surface reach into;
// below zero when they reach into none.
Nm radius_for(std::span<const ClearSpace> clear, Nm least, Nm most) {
    Nm radius = -1;
    for (const auto& space : clear) {
        if (least < space.to && space.from < most) radius = std::max(radius, space.radius);
    }
    return radius;
}

}  // namespace

LapAxes lap_axes(const Piece& upper, const Piece& lower, std::size_t normal_axis) {
    LapAxes axes;
    axes.axis = {index_of(upper.run), 3 - index_of(upper.run) - normal_axis};
    const std::array<const Piece*, 2> first_asked{&lower, &upper};
    for (std::size_t k = 0; k < 2; ++k) {
        const std::size_t axis = axes.axis[k];
        const Piece& first = *first_asked[k];
        const Piece& second = *first_asked[1 - k];
        const Piece* owner = has_gauge_along(first, axis)    ? &first
                             : has_gauge_along(second, axis) ? &second
                                                             : nullptr;
        const Piece& from = owner == nullptr ? upper : *owner;
        axes.heel[axis] = from.datum[axis];
        axes.sense[k] = sense_along(from, axis);
        if (owner != nullptr) axes.stock[k] = owner->stock;
    }
    return axes;
}

Region inside_edges(
    const LapAxes& axes, const Lap& lap, const Plate& upper, const Plate& lower, Nm edge_distance) {
    const Region of_upper = grown(seen_in(axes, upper.box), -edge_distance);
    const Region of_lower = grown(seen_in(axes, lower.box), -edge_distance);
    // A shim's own edges are the lap's: it keeps the edge distance too.
    const Region of_lap = grown(seen_in(axes, lap.rect), lap.gap > 0 ? -edge_distance : 0);
    Region inside;
    for (std::size_t k = 0; k < 2; ++k) {
        inside.lo[k] = std::max({of_upper.lo[k], of_lower.lo[k], of_lap.lo[k]});
        inside.hi[k] = std::min({of_upper.hi[k], of_lower.hi[k], of_lap.hi[k]});
    }
    return inside;
}

void add_obstacles(const LapAxes& axes,
                   const Lap& lap,
                   const Region& within,
                   std::span<const Piece* const> near,
                   Nm surface,
                   int away,
                   std::span<const ClearSpace> clear,
                   std::vector<Region>& obstacles) {
    const std::size_t normal = lap.normal_axis;
    for (const Piece* piece : near) {
        for (const auto& plate : piece->walls()) {
            const Nm least =
                away > 0 ? plate.box.lo[normal] - surface : surface - plate.box.hi[normal];
            const Nm most =
                away > 0 ? plate.box.hi[normal] - surface : surface - plate.box.lo[normal];
            const Nm radius = radius_for(clear, least, most);
            if (radius < 0) continue;
            const Region taken = grown(seen_in(axes, plate.box), radius);
            if (overlap(taken, within)) obstacles.push_back(taken);
        }
    }
}

}  // namespace model
