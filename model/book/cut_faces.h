// What a plane leaves of a piece that is cut through.
#pragma once

#include "model/book/corner_kinds.h"
#include "model/book/line_drawing.h"

#include <array>
#include <vector>

namespace model {

// Of each wall that is cut, its corners in turn: across, and along the fastener's axis, from its
// head, mm.
using CutFaces = std::vector<std::vector<SeenPoint>>;

// Under three corners: the plane goes past it.
std::vector<SeenPoint> cut_through(const engine::ConvexBody& body, const CornerCut& cut);

// Where the piece ends; not where one of its walls goes over into the next.
std::vector<std::array<SeenPoint, 2>> edges_of(const CutFaces& faces);

}  // namespace model
