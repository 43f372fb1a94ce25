// The face of a bay that a panel closes: its plane, which way is out, and its rectangle.
#pragma once

#include "model/resolve/hole_layout.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <span>
#include <vector>

namespace model {

struct PanelFace {
    std::size_t normal = 0;  // axis of the frame
    int outward = 1;         // along it, away from the bay
    Nm plane = 0;
    std::array<std::size_t, 2> axis{};  // in the face, in order; regions are in these
    Region bay;
    std::array<std::array<Index, 2>, 2> planes{};  // of the bay's edges, by axis: least, most
};

// None when its bay, or a plane of it, is not there or has no position: all of that has findings
// of its own.
std::optional<PanelFace> panel_face(const Frame& frame,
                                    const ResolvedFrame& placed,
                                    const Panel& panel);

// Of a box.
Region seen_on(const PanelFace& face, const Box& box);

// How far a plate's side that looks outward lies beyond the face's plane; below zero: inside.
Nm outer_side(const PanelFace& face, const Box& box);

// The same of the side that looks into the bay.
Nm inner_side(const PanelFace& face, const Box& box);

// A slab in front of the plane, from `from` to `to` beyond it, over a region.
Box slab(const PanelFace& face, const Region& region, Nm from, Nm to);

// A wall that a panel can be fastened to: flat, parallel to the face, and its whole box.
bool is_flat_on(const PanelFace& face, const Piece& piece, const Plate& plate);

}  // namespace model
