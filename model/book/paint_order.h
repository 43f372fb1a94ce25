// Which of two bodies hides the other, and an order in which all of them can be painted.
#pragma once

#include "model/book/line_drawing.h"

#include <cstddef>
#include <span>
#include <vector>

namespace model {

// Indices into `bodies`, the furthest first. Exact for bodies that share no volume and of which no
// three hide one another in a ring; in a ring the one in the middle of the depth comes as it lies.
std::vector<std::size_t> paint_order(std::span<const BodyOfPiece> bodies, const Sight& sight);

}  // namespace model
