// The pieces that the fasteners of a joint hold together. Only files of this folder use it.
#pragma once

#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// In Resolved::pieces, each once, rising: the two that meet, what lies between or on them, and
// whatever else a fastener goes through.
std::vector<Index> pieces_together(const Resolved& resolved, const Joint& joint);

}  // namespace model
