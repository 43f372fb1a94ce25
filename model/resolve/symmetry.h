// The ways in which a bar's section looks the same turned or mirrored, and what they do to holes
// and to the way a piece is read.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <span>

namespace model {

// First the flips, then the exchange of the section's axes, then the turn end for end.
struct Symmetry {
    bool reverse = false;  // end for end along the run
    bool swap = false;     // section axes a and b
    bool flip_a = false;
    bool flip_b = false;
};

// An odd number of them is a mirror image, an even number a turn.
constexpr bool is_mirror(const Symmetry& s) {
    return ((static_cast<int>(s.reverse) + static_cast<int>(s.swap) + static_cast<int>(s.flip_a) +
             static_cast<int>(s.flip_b)) %
            2) != 0;
}

// What is needed of a piece's section here; a shim counts as a flat.
struct SymmetricShape {
    SectionForm form = SectionForm::flat;
    Nm a = 0;
    Nm b = 0;
    Nm run = 0;  // the piece's length
};

SymmetricShape symmetric_shape(const Catalogue& catalogue, const Piece& piece);

// All symmetries of the shape, turns before mirror images; the first is "leave it".
std::span<const Symmetry> symmetries(const SymmetricShape& shape);

// The number a wall has after the symmetry.
std::uint8_t wall_after(const SymmetricShape& shape, const Symmetry& symmetry, std::uint8_t wall);

// Wall, gauge and distance of a hole as read after the symmetry.
Hole hole_after(const SymmetricShape& shape, const Symmetry& symmetry, Hole hole);

// The piece with datum, run and walls as read after the symmetry; it does not move.
void read_after(const SymmetricShape& shape, const Symmetry& symmetry, Piece& piece);

}  // namespace model
