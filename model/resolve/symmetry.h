// The ways in which a piece's shape, but for its ends, outline and holes, looks the same turned or
// mirrored, and what they do to ends, outlines and holes and to the way a piece is read.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <span>

namespace model {

// First the flips, then the exchange of the section's axes, then the turn end for end, then the
// exchange of the run and section axis a (of a part of sheet).
struct Symmetry {
    bool reverse = false;  // end for end along the run
    bool swap = false;     // section axes a and b
    bool flip_a = false;
    bool flip_b = false;
    bool transpose = false;  // the run and section axis a
};

// An odd number of them is a mirror image, an even number a turn.
constexpr bool is_mirror(const Symmetry& s) {
    return ((static_cast<int>(s.reverse) + static_cast<int>(s.swap) + static_cast<int>(s.flip_a) +
             static_cast<int>(s.flip_b) + static_cast<int>(s.transpose)) %
            2) != 0;
}

// What is needed of a piece here; a part of sheet counts as a flat of its width and thickness.
struct SymmetricShape {
    SectionForm form = SectionForm::flat;
    Nm a = 0;
    Nm b = 0;
    Nm run = 0;  // the piece's length
    bool is_sheet = false;
    bool is_bevelled = false;  // a flat whose two faces differ: turned over it is another part
};

// A part of sheet must face along its section axis b (see set_facing_along_b).
SymmetricShape symmetric_shape(const Catalogue& catalogue,
                               const Resolved& resolved,
                               const Piece& piece);

// Names the section axes of a part of sheet so that it faces along b. Nothing moves, and gauges
// stay what they are.
void set_facing_along_b(Piece& piece, Lean* lean);

// +1 when run, a and b of the section are right-handed, -1 when they are not; of a part of sheet
// with the way from its outer face inward for b. `lean` is the piece's own, if it has one.
int handedness(const Piece& piece, const Lean* lean);

// All symmetries of the shape, turns before mirror images; the first is "leave it".
std::span<const Symmetry> symmetries(const SymmetricShape& shape);

// The number a wall has after the symmetry.
std::uint8_t wall_after(const SymmetricShape& shape, const Symmetry& symmetry, std::uint8_t wall);

// Wall, gauge and distance of a hole as read after the symmetry.
Hole hole_after(const SymmetricShape& shape, const Symmetry& symmetry, Hole hole);

// The ends (datum end, far end) as read after the symmetry.
std::array<PieceEnd, 2> ends_after(const SymmetricShape& shape,
                                   const Symmetry& symmetry,
                                   const std::array<PieceEnd, 2>& ends);

// A plate's outline on its outer and on its inner face.
struct FaceOutlines {
    Outline near;
    Outline far;  // without corners where it is the same
};

// The outlines of a wall as read after the symmetry: those of the same wall, whatever its number is
// then. Corners keep their order but for the sense of the whole, and near and far keep in step.
FaceOutlines outlines_after(const SymmetricShape& shape,
                            const Symmetry& symmetry,
                            std::uint8_t wall,
                            FaceOutlines outlines);

// The piece with datum, run, walls and ends as read after the symmetry, and its lean if it has one;
// it does not move. Holes and outlines are not its own to change.
void read_after(const SymmetricShape& shape, const Symmetry& symmetry, Piece& piece, Lean* lean);

}  // namespace model
