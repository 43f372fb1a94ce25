// Pieces as convex bodies: one for each wall, as its ends are cut.
#pragma once

#include "engine/geometry/convex.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// Leans, or has an end cut on a slant: more than boxes.
bool is_oblique(const Piece& piece, const Slants& slants);

// In the piece's frame, mm. Parts of sheet count as the boxes that hold them; root fillets are left
// out.
std::vector<engine::Prism> prisms_of(const Piece& piece, const Slants& slants);

engine::Prism prism_in_room(const ResolvedFrame& frame, engine::Prism prism);

std::vector<engine::Prism> prisms_in_room(const ResolvedFrame& frame,
                                          const Piece& piece,
                                          const Slants& slants);

Box box_in_room(const ResolvedFrame& frame, const Box& box);

}  // namespace model
