// Several joints chosen at once, and those that are like one: an end of a frame has many alike.
#pragma once

#include "editor/joint_list.h"
#include "editor/selection.h"

#include <string>
#include <vector>

namespace editor {

// The joints that are chosen: one as `chosen_joint` has it, or several by their names. None where
// something else is chosen beside them.
std::vector<JointName> chosen_joints(const model::Project& project,
                                     const model::Resolved& resolved,
                                     const std::vector<MemberJoint>& joints,
                                     const Selection& selection);

// Selects the joints: their members, and the parts that were made for them.
Selection selection_of_joints(const model::Project& project,
                              const model::Resolved& resolved,
                              const std::vector<JointName>& joints);

// With the joint where it was not among them, else without it.
std::vector<JointName> toggled(std::vector<JointName> joints, const JointName& joint);

// All that meet by the same recipe and are of the same two stocks, the joint itself among them.
std::vector<JointName> joints_like(const model::Project& project,
                                   const std::vector<MemberJoint>& joints,
                                   const JointName& joint);

// "post left + rail top", "12 joints".
std::string words_of(const std::vector<JointName>& joints);

}  // namespace editor
