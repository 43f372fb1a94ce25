#include "model/resolve/added_pieces.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

// `moved_to` by old number.
void renumber(const std::vector<Index>& moved_to, Resolved& out) {
    const auto follow = [&](Index& piece) {
        if (piece < moved_to.size()) piece = moved_to[piece];
    };
    for (auto& joint : out.joints) {
        for (Index& piece : joint.pieces) follow(piece);
        follow(joint.shim);
        follow(joint.brace);
    }
    for (auto& fastener : out.fasteners) {
        for (auto& plate : fastener.stack) follow(plate.piece);
    }
    for (auto& hole : out.holes) {
        follow(hole.piece);
        follow(hole.mate);
    }
}

}  // namespace

std::vector<Index> add_pieces(const std::vector<std::vector<Piece>>& added, Resolved& out) {
    std::vector<Index> first(out.frames.size(), 0);
    std::vector<Index> moved_to(out.pieces.size(), 0);
    std::vector<Piece> pieces;
    for (std::size_t f = 0; f < out.frames.size(); ++f) {
        ResolvedFrame& frame = out.frames[f];
        const Index old_first = frame.first_piece;
        frame.first_piece = static_cast<Index>(pieces.size());
        for (Index i = 0; i < frame.piece_count; ++i) {
            moved_to[old_first + i] = frame.first_piece + i;
            pieces.push_back(out.pieces[old_first + i]);
        }
        first[f] = static_cast<Index>(pieces.size());
        pieces.insert(pieces.end(), added[f].begin(), added[f].end());
        frame.piece_count += static_cast<Index>(added[f].size());
    }
    out.pieces = std::move(pieces);
    renumber(moved_to, out);
    return first;
}

}  // namespace model
