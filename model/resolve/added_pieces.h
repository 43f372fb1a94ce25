// Puts pieces behind those of their frame when others refer to pieces already.
#pragma once

#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// `added` by frame; all numbers of pieces in `out` follow. Gives the number of the first one that
// was added to each frame.
std::vector<Index> add_pieces(const std::vector<std::vector<Piece>>& added, Resolved& out);

}  // namespace model
