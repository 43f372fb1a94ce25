// How a piece as it was made becomes the piece that is wanted now: with the least work, or why not.
#pragma once

#include "model/bench/made_piece.h"

#include <array>
#include <cstddef>
#include <vector>

namespace model {

enum class FaultKind {
    other_section,
    other_alloy,
    other_thickness,
    too_short,
    too_narrow,
    other_end,          // `at`: which
    other_outline,      //
    drilled_elsewhere,  // turned or cut so, none of its holes comes to its place
    hole_cut_through,   // `at`: of the holes made
    hole_too_near,      // `at`: of the holes made, `other`: of those wanted
    hole_too_large,     // `at`: of the holes made, `other`: of those wanted
    hole_tapped_else    // `at`: of the holes made, `other`: of those wanted
};

struct Fault {
    FaultKind kind{};
    Nm amount = 0;
    std::size_t at = 0;
    std::size_t other = 0;
};

// One way of making the wanted piece of the made one.
struct BlankFit {
    Symmetry turn;
    std::array<Nm, 2> section{};     // how large it is along its axes a and b
    MadePiece made;                  // read as the wanted one, before it is cut
    std::array<Nm, 2> cut{};         // off the datum end, the far end
    std::array<Nm, 2> across{};      // off the heel side, the far side, of a part of sheet
    std::array<bool, 2> end_anew{};  // cut at the same long point
    bool outline_anew = false;
    std::vector<std::size_t> to_drill;     // of the wanted holes
    std::vector<std::size_t> to_drill_up;  // of the wanted holes
    std::vector<std::size_t> to_tap;       // of the wanted holes
    std::vector<std::size_t> to_leave;     // of the made holes: open, and not seen to yet
    std::vector<std::size_t> left;         // of the made holes: all that are open and still there
    std::vector<Fault> faults;

    bool is_cut() const;
    bool is_drilled() const { return !to_drill.empty() || !to_drill_up.empty() || !to_tap.empty(); }
    bool is_right() const;
    // A made hole's place by the wanted piece's reading, after cutting.
    MadeHole after_cutting(std::size_t hole) const;
};

// The way with the fewest faults, then with the least work; of ways alike the one that turns it
// least. `with_holes`: it is drilled.
BlankFit blank_fit(const Catalogue& catalogue,
                   const MadePiece& made,
                   const MadePiece& wanted,
                   bool with_holes);

// Holes of a fit whose cuts are known: which are there, to be drilled, left open, in the way.
void compare_holes(BlankFit& fit, const MadePiece& wanted);

// Two outlines whose corners are nowhere apart by more than `same_cut`.
bool are_alike(const Outline& a, const Outline& b);

}  // namespace model
