// The bars at the saw: which pieces have been cut, which are to be cut from them, and what is left.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/bar_supply.h"
#include "model/resolve/resolved.h"

#include <string>
#include <vector>

namespace model {

// Lengths that differ by no more are one length: finer than a saw cuts (common practice).
inline constexpr Nm same_cut = engine::Length::nm_per_mm / 10;

// What a cut that is stated at the saw means for the project as it is now.
struct CutSeen {
    Index piece = no_index;  // that it is; none: spoiled, or of no use any more
    Nm start = 0;            // from the bar's datum end
    Nm length = 0;
    Nm taken = 0;  // off the bar: its length, or what is known better
};

struct BarSeen {
    Nm length = 0;              // before its first cut; 0: it cannot be read
    Nm next_start = 0;          // where a further piece would begin
    std::vector<CutSeen> cuts;  // as BarAtSaw::cuts
};

struct SawSeen {
    std::vector<BarSeen> bars;           // as Stock::at_saw
    std::vector<Index> cut;              // pieces that need no cutting any more, rising
    std::vector<Index> planned;          // pieces that are to be cut from these bars, rising
    std::vector<engine::Error> refused;  // lengths that cannot be read
};

// How much of the bar went with it, as it stands in the project.
const Formula& formula_of_taken(const BarCut& cut);

// The ends of a piece as they are told of one that was cut: those of end_words with lengths in
// tenths of a millimetre, and the hand of the piece itself where it can be told from its ends.
// Neither the project's tape nor the other pieces change it.
std::string ends_text(const Project& project,
                      const Catalogue& catalogue,
                      const Resolved& resolved,
                      const Piece& piece);

// Each cut is a piece of that stock, length and ends, of the same mark and hand where there is one;
// those that have been cut choose first. A planned cut that is none, or that its bar no longer
// holds, leaves its place to others. The others lie in the order in which they stand, which is that
// of the printed plan, whichever is cut first; made ones keep their room before planned ones.
SawSeen saw_seen(const Project& project,
                 const Catalogue& catalogue,
                 const Resolved& resolved,
                 Index stock);

}  // namespace model
