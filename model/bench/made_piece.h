// A piece as it is made: what of the resolved piece can be measured on it, and how it reads when it
// is turned.
#pragma once

#include "model/bench/bench.h"
#include "model/resolve/symmetry.h"

#include <optional>
#include <vector>

namespace model {

// As the project has it now, with its holes.
MadePiece made_as_resolved(const Project& project,
                           const Catalogue& catalogue,
                           const Resolved& resolved,
                           Index piece);

// None where the catalogue has no such section.
std::optional<SymmetricShape> shape_of(const Catalogue& catalogue, const MadePiece& made);

// All ways of turning it that leave its shape what it is, as far as another reading of the given
// hand reads it so: no mirror images. A part of sheet also with its sides exchanged.
std::vector<Symmetry> turns_of(const SymmetricShape& shape,
                               const MadePiece& made,
                               bool to_right_handed);

MadePiece turned(const MadePiece& made, const SymmetricShape& shape, const Symmetry& symmetry);

}  // namespace model
