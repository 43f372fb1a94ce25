// Pieces that enter each other after all: rule 7.
#pragma once

#include "model/resolve/skeleton.h"

#include <span>

namespace model {

// One finding per pair of pieces of one frame whose plates share a volume, with the depth.
void report_interference(const FrameSkeleton& skeleton,
                         const Frame& frame,
                         std::vector<Finding>& findings);

// The same between pieces of different frames, in the room.
void report_interference_of_frames(const Project& project,
                                   const Resolved& resolved,
                                   std::vector<Finding>& findings);

}  // namespace model
