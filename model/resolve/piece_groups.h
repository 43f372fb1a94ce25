// Which pieces hang together, while they are joined one after the other.
#pragma once

#include "model/resolve/resolved.h"

#include <cstddef>
#include <numeric>
#include <vector>

namespace model {

// Each group is known by one of its pieces.
class PieceGroups {
public:
    explicit PieceGroups(std::size_t count) : parent_(count) {
        std::iota(parent_.begin(), parent_.end(), Index{0});
    }

    void join(Index a, Index b) { parent_[of(a)] = of(b); }

    Index of(Index piece) {
        while (parent_[piece] != piece) {
            parent_[piece] = parent_[parent_[piece]];
            piece = parent_[piece];
        }
        return piece;
    }

private:
    std::vector<Index> parent_;
};

}  // namespace model
