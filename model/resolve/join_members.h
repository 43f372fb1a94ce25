// From the bars of one frame to the pieces that it is made of and the places where they lap: rank,
// recipes, set-in, trim, laps, and the parts that recipes ask for.
#pragma once

#include "model/resolve/joint_overrides.h"
#include "model/resolve/part_maker.h"

#include <vector>

namespace model {

struct JoinedMembers {
    FrameSkeleton skeleton;
    std::vector<Lap> laps;
};

// `bars` are of the frame with that number. Where a recipe finds no room once everything is in its
// place, the joint is made otherwise and the whole is worked out anew. Outlines of parts go behind
// those that are there.
JoinedMembers join_members(const PartRoom& room,
                           Index frame,
                           const std::vector<Bar>& bars,
                           JointOverrides& overrides,
                           std::vector<Outline>& outlines,
                           std::vector<Finding>& findings);

}  // namespace model
