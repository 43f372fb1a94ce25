// Pieces as convex bodies that share no volume, to be drawn without hidden lines.
#pragma once

#include "engine/geometry/convex_body.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

struct BodyOfPiece {
    Index piece = 0;
    engine::ConvexBody body;
};

// Of all pieces of a frame, in its own axes, mm. Where walls of a piece cross in a corner, the
// first one has the corner. A part of sheet counts as its outline without what is cut into it;
// panels are left out, since they hide what they cover. What makes no body is left out too.
std::vector<BodyOfPiece> frame_bodies(const Resolved& resolved, Index frame);

// Those of one piece.
void append_piece_bodies(std::vector<BodyOfPiece>& bodies, const Resolved& resolved, Index piece);

// Where the axes of a frame lie in the room.
engine::Placement frame_placement(const ResolvedFrame& frame);

}  // namespace model
