// How several joints can meet and what can hold them: each choice is made for all of them at once.
#pragma once

#include "editor/derived.h"
#include "editor/join_choices.h"
#include "editor/joint_list.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// Braces and leaning members are left out: no recipe has a say in how they lie.
std::vector<Choice> joint_recipe_choices(const model::Project& project,
                                         const std::vector<JointName>& joints);

std::vector<Choice> joint_hold_choices(const model::Project& project,
                                       const std::vector<JointName>& joints);

// States each of the joints anew, as one step.
Change joint_group_change(const model::Project& project,
                          const std::vector<JointName>& joints,
                          const std::function<void(model::JointOverride&)>& change,
                          std::string label);

// The joints that are chosen and what can be done with them: worked out once for each selection and
// state of the project, since they may be thousands.
struct JointGroup {
    std::optional<Revision> revision;
    Selection selection;
    std::vector<JointName> joints;
    std::vector<model::JointOverride> entries;  // what is said of each of them now
    std::vector<Choice> recipes;                // none: no recipe has a say in any of them
    std::vector<Choice> holds;
    Change way_back;               // nothing is said of any of them any more
    std::vector<JointName> alike;  // to the one that is chosen; empty where several are
    std::size_t troubled = 0;      // those of which an error or a warning speaks
};

void bring_up_to_date(JointGroup& group,
                      const Derived& derived,
                      const std::vector<MemberJoint>& joints,
                      const Selection& selection);

}  // namespace editor
