// The part of a lap in which the centre of a fastener may lie.
#pragma once

#include "model/resolve/hole_layout.h"
#include "model/resolve/lap.h"
#include "model/resolve/point_layout.h"

#include <span>
#include <vector>

namespace model {

// A lap's own coordinates: [0] along the upper piece's run, [1] across it. Each counts from the
// heel side of a piece that it is a gauge on: [0] of the lower piece, [1] of the upper one rather
// than the lower one. Where a direction is a gauge on no piece of bar, or on one that leans, it
// counts from the datum of the upper piece, or of the one that does not lean.
struct LapAxes {
    std::array<std::size_t, 2> axis{};  // of the frame
    Point heel{};                       // origin of both; along the normal it is not used
    std::array<int, 2> sense{1, 1};
    std::array<Index, 2> stock{no_index, no_index};  // of the piece that it is a gauge on
};

LapAxes lap_axes(const Piece& upper, const Piece& lower, std::size_t normal_axis);

// What must stay clear about the axis of a fastener on one side of the stack: within `radius` of it
// from `from` to `to` beyond the surface.
struct ClearSpace {
    Nm from = 0;
    Nm to = 0;
    Nm radius = 0;
};

// The lap less the edge distance to the edges of both walls.
Region inside_edges(
    const LapAxes& axes, const Lap& lap, const Plate& upper, const Plate& lower, Nm edge_distance);

// What a slanting cut at an end of the piece takes from the lap with the edge distance to it, in
// steps along the cut.
void add_slanting_edges(const LapAxes& axes,
                        const Piece& piece,
                        const Plate& wall,
                        Nm edge_distance,
                        const Region& within,
                        std::vector<Region>& obstacles);

// What boxes take of it as they are, whatever stays clear of the fastener.
void add_settled(const LapAxes& axes,
                 std::span<const Box> settled,
                 const Region& within,
                 std::vector<Region>& obstacles);

// What plates near the lap take from it on the side of the upper wall (or of the lower one), grown
// by the radii that must stay clear. `near` are pieces; the two of the lap belong among them.
void add_obstacles(const LapAxes& axes,
                   const Lap& lap,
                   const Region& within,
                   std::span<const Piece* const> near,
                   Nm surface,
                   int away,
                   std::span<const ClearSpace> clear,
                   std::vector<Region>& obstacles);

// The same of pieces that lean across the lap's own plane, in slices. False: there are none.
bool add_sliced_obstacles(const LapAxes& axes,
                          const Lap& lap,
                          const Region& within,
                          const Slants& slants,
                          std::span<const Piece* const> near,
                          Nm surface,
                          int away,
                          std::span<const ClearSpace> clear,
                          std::vector<Region>& obstacles);

// The same of pieces that lean in the lap's own plane.
void add_slanted_obstacles(const LapAxes& axes,
                           const Lap& lap,
                           const Region& within,
                           const Slants& slants,
                           std::span<const Piece* const> near,
                           Nm surface,
                           int away,
                           std::span<const ClearSpace> clear,
                           std::vector<OutlineKeptClear>& obstacles);

// A leaning piece's wall in the lap's own coordinates.
FlatPolygon seen_in(const LapAxes& axes,
                    const Slants& slants,
                    const Piece& piece,
                    std::size_t wall = 0);

}  // namespace model
