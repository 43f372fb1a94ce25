// The outline of a wall of a piece, as pieces.json gives it.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <span>

namespace model {

// On the wall's outer and inner face; `far` is empty where the wall's edges are square.
struct WallOutline {
    Outline near;
    Outline far;
};

// The plate's own outline where it has one; else what sloping and notched ends leave of the
// wall, its corners rounded to whole nanometres.
WallOutline wall_outline(const Resolved& resolved,
                         const Piece& piece,
                         const Plate& plate,
                         const Catalogue& catalogue,
                         std::span<const SectionPlate> walls);

}  // namespace model
