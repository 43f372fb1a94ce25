// Which pieces a tape measures from when it proves a face square. Only files of this folder use it.
#pragma once

#include "model/assembly/frame_parts.h"
#include "model/schedule/square.h"

#include <span>
#include <vector>

namespace model {

// A row of AssemblyOrder::squares that is of this frame.
struct SquareAt {
    Index row = 0;
    PieceSet bars;  // that have a corner there
};

std::vector<SquareAt> squares_at(const FrameParts& parts, std::span<const SquareRow> rows);

}  // namespace model
