// What holds a brace or a leaning member at its ends.
#pragma once

#include "model/resolve/fasten.h"

#include <span>
#include <vector>

namespace model {

// How far from its end a lap that holds it may begin: one and a half of its width, as of a member.
Nm brace_reach(const Slants& slants, const Piece& brace);

// The laps that hold the ends of members: those of leaning members as far as they are fastened,
// which shows once the fasteners are planned, and none of braces, on which no end of a member
// relies.
std::vector<Lap> holding_laps(const FrameSkeleton& skeleton,
                              std::span<const Lap> laps,
                              std::span<const LapPlan> plans,
                              Index first_piece);

// A finding for each end of a brace or a leaning member that no fastener holds. Plans have pieces
// by their number in the project; `first_piece` is that of the frame's first one.
void report_loose_braces(const Slants& slants,
                         const FrameSkeleton& skeleton,
                         const Frame& frame,
                         std::span<const LapPlan> plans,
                         Index first_piece,
                         std::vector<Finding>& findings);

}  // namespace model
