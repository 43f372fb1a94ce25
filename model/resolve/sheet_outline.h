// Loops of parts of sheet as they lie in the frame.
#pragma once

#include "model/resolve/lap_polygon.h"

namespace model {

// A loop of the plate of a part that does not lean, along the two axes of the frame across it;
// counter-clockwise, and convex only if the loop is.
FlatPolygon sheet_loop(const Piece& part, const Corners& loop);

}  // namespace model
