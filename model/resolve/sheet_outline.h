// Loops of parts of sheet as they lie in the frame.
#pragma once

#include "model/resolve/lap_polygon.h"

namespace model {

// A loop of the plate of a part that does not lean, along the two axes of the frame across it;
// counter-clockwise, and convex only if the loop is.
FlatPolygon sheet_loop(const Piece& part, const Corners& loop);

enum class SharedPlace { none, in_doubt, sure };

// Whether a piece that leans takes place that a part of sheet really fills, the boxes of both being
// in each other's way: what is cut out of the sheet may leave it free. In doubt where it runs
// partly through an opening, or across the sheet's own plane.
SharedPlace shared_place(const Slants& slants, const Piece& leaning, const Piece& part);

}  // namespace model
