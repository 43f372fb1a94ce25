// A piece laid flat: its walls opened out from the heel with their inner faces up, as they are seen
// at the drill press. The walls lie in the same order for both hands of a section; of one hand the
// datum end is above, of the other below.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace model {

// Millimetres across the drawing, from its left edge.
struct UnrolledWall {
    std::string name;  // "leg a"
    std::uint8_t wall = 0;
    double heel = 0.0;  // the edge that gauges are measured from
    double toe = 0.0;

    double left() const { return heel < toe ? heel : toe; }
    double right() const { return heel < toe ? toe : heel; }
};

struct UnrolledHole {
    Index hole = 0;         // in Resolved::holes
    std::size_t wall = 0;   // in UnrolledPiece::walls
    double across = 0.0;    // mm from the drawing's left edge
    double down = 0.0;      // mm from its upper edge
    double diameter = 0.0;  // mm
};

// Across from the left edge and down from the upper one, mm.
using UnrolledLoop = std::vector<std::array<double, 2>>;

struct UnrolledPiece {
    double width = 0.0;   // mm
    double length = 0.0;  // mm
    bool datum_is_below = false;
    std::vector<UnrolledWall> walls;  // from left to right
    std::vector<UnrolledHole> holes;
    // The outer faces of its walls and what is cut out of them; empty for a plain rectangle.
    std::vector<UnrolledLoop> loops;
};

// What is cut: the edges of all loops, or of the plain rectangle, less those along a fold.
using UnrolledEdge = std::array<std::array<double, 2>, 2>;
std::vector<UnrolledEdge> cut_edges(const UnrolledPiece& flat);

// Turned by half a turn where its datum end is below. Walls are from left to right again.
UnrolledPiece with_datum_above(UnrolledPiece flat);

// The same with its outer faces up, as paper lies that is wrapped round it.
UnrolledPiece seen_from_outside(UnrolledPiece flat);

UnrolledPiece unrolled_piece(const Resolved& resolved, const Catalogue& catalogue, Index piece);

}  // namespace model
