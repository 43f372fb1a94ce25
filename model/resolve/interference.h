// Pieces that enter each other after all: rule 7.
#pragma once

#include "model/resolve/lap_polygon.h"
#include "model/resolve/skeleton.h"

#include <span>

namespace model {

// How far two pieces of a frame would have to be moved apart; 0 when they share no volume. Parts of
// sheet count as whole, without what is cut out of them (see shared_place).
Nm depth_of_interference(const Piece& a, const Piece& b, const Slants& slants);

// One finding per pair of members of one frame whose plates share a volume, with the depth. `tree`
// is over the extents of the frame's pieces.
void report_interference(const Project& project,
                         const FrameSkeleton& skeleton,
                         const Slants& slants,
                         const engine::BoxTree& tree,
                         std::vector<Finding>& findings);

// The same between pieces of different frames, in the room.
void report_interference_of_frames(const Project& project,
                                   const Resolved& resolved,
                                   std::vector<Finding>& findings);

}  // namespace model
