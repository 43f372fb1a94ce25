// Which joints are looked at: a button with their name, and the list of all of them. With Shift or
// Ctrl a click chooses several.
#pragma once

#include "editor/derived.h"
#include "editor/joint_group.h"
#include "editor/joint_list.h"
#include "editor/selection.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

// The joints in the order of the list: those of the chosen members first. Indices, and how many
// come first.
struct JointOrder {
    std::vector<std::size_t> joints;
    std::size_t of_chosen = 0;
};

JointOrder joint_order(const std::vector<MemberJoint>& joints, const Selection& selection);

// The list as it stands: it is not put in a new order under the hand that chooses in it.
struct JointListing {
    std::optional<Revision> revision;
    Selection chosen;  // with which it was drawn last
    JointOrder order;
    std::optional<JointName> anchor;  // where a range begins
    bool wants_open = false;          // the list of the button: several are being chosen
};

// "flush, 4 fasteners"; "staggered lap, 1 of 2 in a lap"; "not joined".
std::string joint_state_words(const MemberJoint& joint);

// All of them, in what is left of the panel. The joints that are chosen after a click.
std::optional<std::vector<JointName>> draw_joint_list(const Derived& derived,
                                                      const std::vector<MemberJoint>& joints,
                                                      JointListing& listing,
                                                      const Selection& selection);

// The button. The joints that are chosen after a click in its list.
std::optional<std::vector<JointName>> draw_joint_choice(const Derived& derived,
                                                        const std::vector<MemberJoint>& joints,
                                                        const std::vector<JointName>& chosen,
                                                        JointListing& listing,
                                                        const Selection& selection);

}  // namespace editor
