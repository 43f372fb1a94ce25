// Where a brace lies and how long it is: from its line and its face to a piece.
#pragma once

#include "model/resolve/brace_face.h"
#include "model/resolve/brace_line.h"

#include <optional>

namespace model {

struct PlacedBrace {
    Piece piece;  // its lean and its outline are the first of the two here
    Lean lean;
    Outline outline;
    FlatPolygon polygon;  // in the face
    Nm surface = 0;       // where it touches what it lies on
};

// None where nothing is left of it. `slants` are those of the skeleton's pieces, `tree` is over the
// extents of the skeleton's pieces.
std::optional<PlacedBrace> place_brace(const PartRoom& room,
                                       const FrameSkeleton& skeleton,
                                       const Slants& slants,
                                       const engine::BoxTree& tree,
                                       const BraceLine& line,
                                       const BraceFace& face);

}  // namespace model
