#include "model/resolve/lap_room.h"

#include "model/resolve/slanted_end.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

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

FlatPolygon polygon_of(const Region& region) {
    const auto& [lo, hi] = region;
    return rectangle({{lo[0], lo[1], 0}, {hi[0], hi[1], 0}}, {0, 1});
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
    return piece.stock != no_index && piece.lean == no_index && index_of(piece.run) != axis;
}

// What the cut takes of the wall with the distance, as boxes side by side across the wall.
std::vector<Box> taken_by_cut(const Piece& piece, const Plate& wall, std::size_t end, Nm distance) {
    constexpr Nm strips = 8;
    const std::size_t run = index_of(piece.run);
    const std::size_t across = 3 - run - wall.normal_axis;
    const double slope = piece.ends[end].slope[across == index_of(piece.a_axis) ? 0 : 1];
    const double away = static_cast<double>(distance) * std::sqrt(1.0 + slope * slope);
    const Nm width = wall.box.hi[across] - wall.box.lo[across];
    const auto [at, inwards] = long_end(piece, end);
    std::vector<Box> taken;
    for (Nm i = 0; i < strips; ++i) {
        Box strip = wall.box;
        // A little over each other, so that no centre lies between two of them.
        strip.lo[across] = wall.box.lo[across] + width * i / strips - 1;
        strip.hi[across] = wall.box.lo[across] + width * (i + 1) / strips + 1;
        const double recedes = recedes_within(piece, end, strip);
        const Nm from_end = static_cast<Nm>(std::ceil(recedes + away));
        strip.lo[run] = std::min(at, at + inwards * from_end);
        strip.hi[run] = std::max(at, at + inwards * from_end);
        taken.push_back(strip);
    }
    return taken;
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

// What the clear spaces of any centre in the lap can reach into.
Box reach_of(const Lap& lap, Nm surface, int away, std::span<const ClearSpace> clear) {
    Nm from = std::numeric_limits<Nm>::max();
    Nm to = 0;
    Nm radius = 0;
    for (const auto& space : clear) {
        from = std::min(from, space.from);
        to = std::max(to, space.to);
        radius = std::max(radius, space.radius);
    }
    Box reach = lap.rect;
    for (std::size_t k = 0; k < 3; ++k) {
        reach.lo[k] -= radius;
        reach.hi[k] += radius;
    }
    reach.lo[lap.normal_axis] = std::min(surface + away * from, surface + away * to);
    reach.hi[lap.normal_axis] = std::max(surface + away * from, surface + away * to);
    return reach;
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
        const Piece& straight = upper.lean == no_index ? upper : lower;
        const Piece& from = owner == nullptr ? straight : *owner;
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

void add_slanting_edges(const LapAxes& axes,
                        const Piece& piece,
                        const Plate& wall,
                        Nm edge_distance,
                        const Region& within,
                        std::vector<Region>& obstacles) {
    for (std::size_t end = 0; end < 2; ++end) {
        if (!is_slanted(piece.ends[end])) continue;
        for (const auto& box : taken_by_cut(piece, wall, end, edge_distance)) {
            const Region taken = seen_in(axes, box);
            if (overlap(taken, within)) obstacles.push_back(taken);
        }
    }
}

void add_settled(const LapAxes& axes,
                 std::span<const Box> settled,
                 const Region& within,
                 std::vector<Region>& obstacles) {
    for (const auto& box : settled) {
        const Region taken = seen_in(axes, box);
        if (overlap(taken, within)) obstacles.push_back(taken);
    }
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
        if (piece->lean != no_index) continue;
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

bool add_sliced_obstacles(const LapAxes& axes,
                          const Lap& lap,
                          const Region& within,
                          const Slants& slants,
                          std::span<const Piece* const> near,
                          Nm surface,
                          int away,
                          std::span<const ClearSpace> clear,
                          std::vector<Region>& obstacles) {
    const std::size_t normal = lap.normal_axis;
    const std::size_t before = obstacles.size();
    const auto taken_by = [&](const Box& box) -> std::optional<Region> {
        const Nm least = away > 0 ? box.lo[normal] - surface : surface - box.hi[normal];
        const Nm most = away > 0 ? box.hi[normal] - surface : surface - box.lo[normal];
        const Nm radius = radius_for(clear, least, most);
        if (radius < 0) return std::nullopt;
        const Region taken = grown(seen_in(axes, box), radius);
        return overlap(taken, within) ? std::optional(taken) : std::nullopt;
    };
    const Box reach = reach_of(lap, surface, away, clear);
    for (const Piece* piece : near) {
        if (piece->lean == no_index || face_axis(*piece) == normal) continue;
        if (!taken_by(piece->extents)) continue;  // slices are dear
        for (const auto& box : slices_of(slants, *piece, reach)) {
            if (const auto taken = taken_by(box)) obstacles.push_back(*taken);
        }
    }
    return obstacles.size() > before;
}

void add_slanted_obstacles(const LapAxes& axes,
                           const Lap& lap,
                           const Region& within,
                           const Slants& slants,
                           std::span<const Piece* const> near,
                           Nm surface,
                           int away,
                           std::span<const ClearSpace> clear,
                           std::vector<OutlineKeptClear>& obstacles) {
    const std::size_t normal = lap.normal_axis;
    for (const Piece* piece : near) {
        if (piece->lean == no_index || face_axis(*piece) != normal) continue;
        for (std::size_t wall = 0; wall < piece->plate_count; ++wall) {
            const Box& box = piece->plates[wall].box;
            const Nm least = away > 0 ? box.lo[normal] - surface : surface - box.hi[normal];
            const Nm most = away > 0 ? box.hi[normal] - surface : surface - box.lo[normal];
            const Nm radius = radius_for(clear, least, most);
            if (radius < 0) continue;
            auto polygon = seen_in(axes, slants, *piece, wall);
            // A nanometre more, so that a region as thin as a line has an area.
            if (area_of(common_polygon(polygon, polygon_of(grown(within, radius + 1)))) <= 0.0) {
                continue;
            }
            obstacles.push_back({std::move(polygon), static_cast<double>(radius)});
        }
    }
}

FlatPolygon seen_in(const LapAxes& axes,
                    const Slants& slants,
                    const Piece& piece,
                    std::size_t wall) {
    FlatPolygon polygon = leaning_wall(slants, piece, axes.axis, wall);
    for (auto& corner : polygon) {
        for (std::size_t k = 0; k < 2; ++k) {
            const std::size_t i = axes.axis[k];
            corner[k] = axes.sense[k] * (corner[k] - static_cast<double>(axes.heel[i]));
        }
    }
    if (axes.sense[0] * axes.sense[1] < 0) std::reverse(polygon.begin(), polygon.end());
    return polygon;
}

}  // namespace model
