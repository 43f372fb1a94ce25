// What the section of a joint shows: its pieces cut through, and how much of them.
#pragma once

#include "model/book/corner_kinds.h"
#include "model/book/cut_faces.h"
#include "model/book/line_drawing.h"
#include "model/resolve/fastener_body.h"

#include <optional>
#include <vector>

namespace model {

// In mm from the fastener's axis, under its head, which is up.
struct CornerView {
    CornerCut cut;
    BodyShape shape;               // of the fastener
    std::vector<CutFaces> pieces;  // those of `corner_sides` first
    SeenBounds window;
};
CornerView corner_view(const Catalogue& catalogue, const Resolved& resolved, Index joint);

// Where the edge of a side lies that is so far from the fastener, to the right of its axis; none
// where the window ends before it.
std::optional<double> edge_shown(const CornerView& view,
                                 const Resolved& resolved,
                                 const CornerSide& side,
                                 engine::Length distance);

// As edge_distances_drawn, those alone that the window shows.
EdgeDistances edge_distances_shown(const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   Index joint);

}  // namespace model
