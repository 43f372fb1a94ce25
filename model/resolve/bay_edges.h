// The upright edges of what a frame's bays take up together.
#pragma once

#include "model/resolve/resolved.h"

#include <array>
#include <span>
#include <vector>

namespace model {

// A stretch of an upright line along which the bays have a corner, and how the post that frames it
// is laid: heel out at a corner that stands out, root out at a re-entrant one.
struct UprightEdge {
    Nm from = 0;
    Nm to = 0;
    Seat seat = Seat::heel;
    std::array<Sense, 2> legs{};
};

// Those on the line at x and y, rising; stretches that are framed alike are one.
std::vector<UprightEdge> upright_edges(std::span<const Box> bays, Nm x, Nm y);

}  // namespace model
