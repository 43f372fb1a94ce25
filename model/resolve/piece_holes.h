// Holes as pieces have them: measured from the datum, and in order.
#pragma once

#include "model/resolve/resolved.h"

namespace model {

// Where a point of the frame lies on a wall of a piece.
Hole hole_in(const Piece& piece, Index number, std::uint8_t wall, const Point& at);

// The same of a piece that leans, to the nearest nanometre.
Hole hole_in(
    const Piece& piece, const Lean& lean, Index number, std::uint8_t wall, const Point& at);

// Puts the holes of one piece together, by wall, gauge, then distance.
void sort_holes(Resolved& out);

}  // namespace model
