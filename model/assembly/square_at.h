// Which pieces a tape measures from when it proves a face square. Only files of this folder use it.
#pragma once

#include "model/assembly/part_ways.h"
#include "model/schedule/square.h"

#include <span>
#include <vector>

namespace model {

// A row of AssemblyOrder::squares that is of this frame.
struct SquareAt {
    Index row = 0;
    PieceSet bars;  // that have a corner there
};

std::vector<SquareAt> squares_at(const FrameParts& parts,
                                 const PartWays& ways,
                                 std::span<const SquareRow> rows);

// Which of a frame's diagonals are still to be measured.
class SquaresLeft {
public:
    explicit SquaresLeft(std::span<const SquareAt> squares)
        : squares_{squares}, is_measured_(squares.size()) {}

    // Those that can be now, rows of AssemblyOrder::squares; each once.
    std::vector<Index> taken(const PieceSet& present);

    // Whether the joint of these pieces is in a face that is still to be measured.
    bool wait_for(const PieceSet& joint) const;

private:
    std::span<const SquareAt> squares_;
    std::vector<bool> is_measured_;
};

}  // namespace model
