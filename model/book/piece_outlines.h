// The lines of a piece that is made of several bodies: without seams where these touch.
#pragma once

#include "model/book/line_drawing.h"

#include <span>
#include <vector>

namespace model {

// The edges of one of the bodies of a piece, where the piece ends or bends there, and one of the
// faces beside looks at the viewer; what hangs together as one line. `whole`: all its bodies.
std::vector<std::vector<SeenPoint>> outlines_of(const engine::ConvexBody& body,
                                                std::span<const BodyOfPiece> whole,
                                                const Sight& sight);

}  // namespace model
