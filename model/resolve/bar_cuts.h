// How a piece of bar is cut and drilled, in the section's own axes.
#pragma once

#include "engine/geometry/bar_solid.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace model {

bool has_square_ends(const Piece& piece);  // and no notch

// The cut recedes by 0 at the long point: where the section's walls, with square corners, reach
// furthest against the slope. mm.
engine::BarCut end_cut(const PieceEnd& end, std::span<const SectionPlate> walls);

// What of a wall, along its width, a notch takes away: from where no other wall, no root fillet and
// no rounded corner of a tube lies over it.
std::array<Nm, 2> notch_range(std::size_t wall,
                              const Section& section,
                              std::span<const SectionPlate> walls);

// The notches of both ends, one for each wall that has any.
std::vector<engine::BarNotch> end_notches(const Piece& piece,
                                          const Section& section,
                                          std::span<const SectionPlate> walls);

// The holes of a piece across its section. Those in no wall are passed over.
void collect_cross_holes(std::vector<engine::CrossHole>& into,
                         const Resolved& resolved,
                         const Piece& piece,
                         std::span<const SectionPlate> walls);

}  // namespace model
