// Pieces that enter each other after all: rule 7.
#pragma once

#include "model/resolve/skeleton.h"

#include <span>

namespace model {

// One finding per pair of members of one frame whose plates share a volume, with the depth. `tree`
// is over the extents of the frame's pieces.
void report_interference(const Project& project,
                         const FrameSkeleton& skeleton,
                         const engine::BoxTree& tree,
                         std::vector<Finding>& findings);

// The same between pieces of different frames, in the room.
void report_interference_of_frames(const Project& project,
                                   const Resolved& resolved,
                                   std::vector<Finding>& findings);

}  // namespace model
