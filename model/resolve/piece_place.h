// Where a piece's own axes and those of its walls lie in the room.
#pragma once

#include "engine/geometry/placement.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <span>

namespace model {

// x and y along the section axes, z along the run, from the datum; mm.
engine::Placement piece_placement(const Resolved& resolved, const Piece& piece);

// A wall: x along the piece from its datum end, y across the wall from its heel side, z from the
// outer face into the metal. The origin is on the outer face.
struct WallPlacement {
    engine::Placement place;
    std::array<Nm, 2> lo{};  // of the wall along x and y, before any outline
    std::array<Nm, 2> hi{};
    Nm thickness = 0;
};

// `walls` are those of the piece's section; empty for a part of sheet. A part of sheet that leans
// must still have its faces across an axis of the frame.
WallPlacement wall_placement(const Resolved& resolved,
                             const Piece& piece,
                             const Plate& plate,
                             std::span<const SectionPlate> walls);

constexpr double in_mm(Nm length) { return static_cast<double>(length) / 1e6; }

}  // namespace model
