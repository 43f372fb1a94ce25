#include "model/assembly/joint_pieces.h"

#include <algorithm>

namespace model {

std::vector<Index> pieces_together(const Resolved& resolved, const Joint& joint) {
    std::vector<Index> pieces{joint.pieces[0], joint.pieces[1], joint.shim, joint.brace};
    const auto fasteners = resolved.fasteners_of(joint);
    for (const auto& fastener : fasteners) {
        for (std::size_t k = 0; k < fastener.stack_count; ++k)
            pieces.push_back(fastener.stack[k].piece);
    }
    std::erase(pieces, no_index);
    std::ranges::sort(pieces);
    pieces.erase(std::unique(pieces.begin(), pieces.end()), pieces.end());
    return pieces;
}

}  // namespace model
