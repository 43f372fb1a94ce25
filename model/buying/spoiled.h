// A piece that was cut wrong: from what it is cut again, and what becomes of the bad one.
#pragma once

#include "model/project/edit.h"
#include "model/schedule/saw_bars.h"

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
// was planned. Errors: those of the text; out_of_range where it is shorter than the shop keeps,
// with that it is scrap, and where it is longer than what its bar held.
engine::Result<Edit> bad_piece_kept(const Project& project,
                                    const Resolved& resolved,
                                    const SpoiledPiece& piece,
                                    const std::string& length);

}  // namespace model
