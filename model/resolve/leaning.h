// Puts the leaning members of a frame against its level ones: angle that runs from node to node of
// a face, one leg along it, held where that laps theirs.
#pragma once

#include "model/resolve/lap.h"
#include "model/resolve/part_maker.h"
#include "model/resolve/skeleton.h"

#include <vector>

namespace model {

// They go behind the pieces of the skeleton, leans behind those of `out`; level members that are in
// their way are notched. Laps as by add_braces. What cannot be laid out becomes a finding.
void add_leaning(const PartRoom& room,
                 FrameSkeleton& skeleton,
                 const Frame& frame,
                 const ResolvedFrame& placed,
                 Resolved& out,
                 std::vector<Lap>& laps);

}  // namespace model
