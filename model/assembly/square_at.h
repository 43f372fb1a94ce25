// What a tape proves square, and when: which faces, and what bars close before these are whole.
// Only files of this folder use it.
#pragma once

#include "model/assembly/closed_rectangles.h"
#include "model/assembly/part_ways.h"
#include "model/schedule/square.h"

#include <optional>
#include <span>
#include <vector>

namespace model {

// A row of AssemblyOrder::squares that is of this frame.
struct SquareAt {
    Index row = 0;
    RectangleAt place;
    PieceSet bars;  // that have a corner there
};

std::vector<SquareAt> squares_at(const FrameParts& parts,
                                 const PartWays& ways,
                                 std::span<const SquareRow> rows);

// Which of a frame's diagonals are still to be measured, and which joints the others prove. All
// must outlive it; joints are those of FrameParts.
class SquaresLeft {
public:
    // `rows` are AssemblyOrder::squares; what `prove` tells is put behind them.
    SquaresLeft(const FrameParts& parts,
                std::span<const SquareAt> squares,
                std::vector<SquareRow>& rows)
        : parts_{parts},
          squares_{squares},
          rows_{rows},
          rectangles_{parts},
          is_measured_(squares.size()) {}

    // Those of faces that can be now, rows of AssemblyOrder::squares; each once.
    std::vector<Index> taken(const PieceSet& present);

    // More of them, of what bars close now, so that as many of these joints are proven as can be:
    // those first that prove the most.
    void prove(std::span<const Index> joints, const PieceSet& present, std::vector<Index>& told);

    // Whether the joint of these pieces is in a face that is still to be measured.
    bool wait_for(const PieceSet& joint) const;

    // Whether bars cross there and no diagonal that was measured tells that they do so square.
    bool is_unproven(Index joint) const;

    // Whether one does once the frame is whole.
    bool is_proven_later(Index joint) const;

private:
    std::optional<ClosedRectangle> best_of(std::span<const Index> joints,
                                           const PieceSet& present) const;
    std::size_t count_proven(std::span<const Index> joints, const RectangleAt& by) const;

    const FrameParts& parts_;
    std::span<const SquareAt> squares_;
    std::vector<SquareRow>& rows_;
    ClosedRectangles rectangles_;
    std::vector<bool> is_measured_;
    std::vector<RectangleAt> measured_;
};

}  // namespace model
