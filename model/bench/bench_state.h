// What the ticks of one piece mean now. Only files of this folder use it.
#pragma once

#include "model/bench/blank_fit.h"

#include <vector>

namespace model {

struct SeenPiece {
    MadePiece wanted;
    BlankFit fit;
    BenchVerdict verdict = BenchVerdict::still_right;
};

SeenPiece seen_piece(const Project& project,
                     const Catalogue& catalogue,
                     const Resolved& resolved,
                     Index piece,
                     const PieceTicks& ticks);

// By piece: whether a fastener goes through it.
std::vector<bool> fastened_pieces(const Resolved& resolved);

bool is_needed(const Piece& piece, bool is_fastened, BenchWork work);

// Null where it has none.
const PieceTicks* ticks_of(const BenchTicks& ticks, const PieceName& name);

}  // namespace model
