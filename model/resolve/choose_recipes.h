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

// After bars are set in: a recipe whose members must lie in one layer becomes a staggered lap where
// they do not, and a finding says so. Whether there was one; bars are to be set in anew then.
bool lap_what_is_not_in_one_layer(FrameSkeleton& skeleton,
                                  const Frame& frame,
                                  std::vector<Finding>& findings);

// What the recipes do to the ends of bars before they are trimmed.
void cut_ends(FrameSkeleton& skeleton, Nm end_gap);

}  // namespace model
