// A piece that was cut wrong: from what it is cut again, and what becomes of the bad one.
#pragma once

#include "model/project/edit.h"
#include "model/schedule/saw_bars.h"

#include <optional>
#include <string>
#include <vector>

namespace model {

struct SpoiledPiece {
    CutPlace place;  // of its cut: two of one mark and length are told apart by that
    std::string mark;
    engine::Length length;  // that it should have had
};

// "Cut A3 again from bar 2 at the saw, from 61 3/8 in on." By the bars as they are planned once it
// is spoiled: what lies there is used before one more bar is bought.
std::string words_of_cutting_again(const Project& project,
                                   const std::vector<SawBar>& bars,
                                   const SpoiledPiece& piece,
                                   const std::string& currency);

// Whether it is spoiled as the bars are now: it may have been undone since.
bool is_spoiled(const std::vector<SawBar>& bars, const SpoiledPiece& piece);

// The bad piece as an offcut on the rack, once it is measured: what was cut wrong is not as long as
// was planned. How long it is counts for all that lies behind it on its bar. Errors: those of the
// text; out_of_range where it is shorter than the shop keeps, with that it is scrap, where it is
// longer than what its bar held, and where it was laid on the rack before and is there no more.
engine::Result<Edit> bad_piece_kept(const Project& project,
                                    const Resolved& resolved,
                                    const SpoiledPiece& piece,
                                    const std::string& length);

// The bad piece to the scrap, once it is measured. Errors: those of the text; out_of_range where it
// is longer than what its bar held.
engine::Result<Edit> bad_piece_measured(const Project& project,
                                        const Resolved& resolved,
                                        const SpoiledPiece& piece,
                                        const std::string& length);

// The planned cut that words_of_cutting_again names; none where there is none.
std::optional<SawTick> tick_of_cutting_again(const Project& project,
                                             const std::vector<SawBar>& bars,
                                             const SpoiledPiece& piece);

}  // namespace model
