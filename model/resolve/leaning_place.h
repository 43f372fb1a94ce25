// Where a leaning member lies and how long it is: from its line and its face to a piece.
#pragma once

#include "model/resolve/brace_face.h"
#include "model/resolve/brace_line.h"
#include "model/resolve/part_maker.h"

#include <optional>

namespace model {

struct PlacedLeaning {
    Piece piece;  // its lean is the first of the one here
    Lean lean;
    FlatPolygon polygon;  // of its leg along the face
    Nm surface = 0;       // where that touches what it lies on
    Nm moved_in = 0;      // from the line between its nodes, the way its leg points
};

// Whether a box shares a volume with one of its walls.
bool enters(const PlacedLeaning& leaning, const BraceLine& line, const Box& box);

// Both ends are cut along the planes of its nodes across which it runs the most: level, of a post.
// They stop short, by the shop's end gap, of the walls that lie along those planes there; walls
// that stand in its way it clears by moving across its run, by whole marks of the tape. None where
// nothing is left of it. `slants` are those of the skeleton's pieces, `tree` is over their extents.
std::optional<PlacedLeaning> place_leaning(const PartRoom& room,
                                           const FrameSkeleton& skeleton,
                                           const engine::BoxTree& tree,
                                           const BraceLine& line,
                                           const BraceFace& face,
                                           Sense leg);

}  // namespace model
