// The metal of a piece as convex bodies, what outlines cut away left out. Only files of this folder
// use it.
#pragma once

#include "engine/geometry/convex_overlap.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

struct PieceBody {
    Box box;  // the least that holds it
    bool is_box = true;
    // Thinner by `touch_mm` on each side, so that what touches shares no volume. Empty of a box,
    // until solid_of is asked.
    engine::ConvexBody solid;
    engine::Facets facets;
};

inline constexpr double touch_mm = 0.002;

// In the frame, by wall. Root fillets are left out.
std::vector<PieceBody> bodies_of(const Slants& slants, const Piece& piece);

// Gives a box its solid and its facets too.
void add_solid(PieceBody& body);

// Whether any of them reaches into the box. Those that are no boxes must have their solids.
bool reaches_into(const Box& room, const std::vector<PieceBody>& bodies);

}  // namespace model
