// Ends of a piece that are cut on a slant, as a mitre is.
#pragma once

#include "model/resolve/lap_polygon.h"
#include "model/resolve/resolved.h"

namespace model {

bool is_slanted(const PieceEnd& end);

// By how much the cut at that end (0 at the datum, else 1) recedes from the long point, at the
// place within the box where it does so most. In nm.
double recedes_within(const Piece& piece, std::size_t end, const Box& box);

// Where the end lies along the run before a cut takes anything of it, and which way the piece
// extends from there.
struct LongEnd {
    Nm at = 0;
    int inwards = 1;
};
LongEnd long_end(const Piece& piece, std::size_t end);

// The largest rectangle left of `rect`, which lies on that wall, once both ends are cut. It may be
// left without area.
Box within_slanted_ends(const Piece& piece, const Plate& wall, Box rect);

// What both cuts leave of a wall of a piece that does not lean, along the two axes of the frame
// across the wall: where a cut bevels the wall too, as far as it leaves the whole thickness. It may
// be left empty.
FlatPolygon wall_polygon(const Piece& piece, const Plate& wall);

}  // namespace model
