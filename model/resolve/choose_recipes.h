// Which recipe each meeting follows: what the joint says, else its frame, else the shop.
#pragma once

#include "model/resolve/joint_overrides.h"
#include "model/resolve/part_maker.h"
#include "model/resolve/skeleton.h"

#include <span>
#include <vector>

namespace model {

// Fills Meeting::recipe. A recipe that cannot be made where it is asked for is a finding that says
// what to use; the joint is made by the recipe that stands in for it until then. So are, with
// nothing said here, the meetings whose recipe found no room before.
void choose_recipes(FrameSkeleton& skeleton,
                    const PartRoom& room,
                    JointOverrides& overrides,
                    std::span<const NoRoom> no_room,
                    std::vector<Finding>& findings);

// The recipe that needs least: the staggered lap, of two tubes the corner cleat.
std::uint8_t stands_in_for(const FrameSkeleton& skeleton, const Meeting& meeting);

// After bars are set in: a recipe whose members must lie in one layer becomes a staggered lap where
// they do not, and a finding says so. Whether there was one; bars are to be set in anew then.
bool lap_what_is_not_in_one_layer(FrameSkeleton& skeleton,
                                  const Frame& frame,
                                  const JointOverrides& overrides,
                                  std::vector<Finding>& findings);

// What the recipes do to the ends of bars before they are trimmed.
void cut_ends(FrameSkeleton& skeleton, Nm end_gap);

}  // namespace model
