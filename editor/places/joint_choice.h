// Which joint is looked at: a button with its name, and the list of all of them.
#pragma once

#include "editor/derived.h"
#include "editor/joint_list.h"
#include "editor/selection.h"

#include <optional>
#include <vector>

namespace editor {

// The joints in the order of the list: those of the chosen members first. Indices, and how many
// come first.
struct JointOrder {
    std::vector<std::size_t> joints;
    std::size_t of_chosen = 0;
};

JointOrder joint_order(const std::vector<MemberJoint>& joints, const Selection& selection);

// "flush, 4 fasteners"; "staggered lap, 1 of 2 in a lap"; "not joined".
std::string joint_state_words(const MemberJoint& joint);

// All of them, in what is left of the panel. The joint that was clicked.
std::optional<JointName> draw_joint_list(const Derived& derived,
                                         const std::vector<MemberJoint>& joints,
                                         const Selection& selection);

// The button. The joint that was clicked in its list.
std::optional<JointName> draw_joint_choice(const Derived& derived,
                                           const std::vector<MemberJoint>& joints,
                                           const std::optional<JointName>& chosen,
                                           const Selection& selection);

}  // namespace editor
