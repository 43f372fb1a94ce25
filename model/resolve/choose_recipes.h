// Which recipe each meeting follows: what the joint says, else its frame, else the shop.
#pragma once

#include "model/project/project.h"
#include "model/resolve/joint_overrides.h"
#include "model/resolve/skeleton.h"

#include <vector>

namespace model {

// Fills Meeting::recipe. A recipe that cannot be made where it is asked for is a finding that says
// what to use; the joint is a staggered lap until then.
void choose_recipes(FrameSkeleton& skeleton,
                    const Project& project,
                    const Frame& frame,
                    const JointOverrides& overrides,
                    std::vector<Finding>& findings);

// What the recipes do to the ends of bars before they are trimmed.
void cut_ends(FrameSkeleton& skeleton, Nm end_gap);

}  // namespace model
