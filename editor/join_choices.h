// How members can meet and what can hold them, as choices with their edits: for one joint, for a
// frame, for the whole project.
#pragma once

#include "editor/change.h"
#include "editor/choice_price.h"
#include "editor/joint_list.h"
#include "model/project/project.h"

#include <string>
#include <vector>

namespace editor {

// "as the frame has it" first, then each recipe.
std::vector<Choice> joint_recipe_choices(const model::Project& project, const JointName& joint);

// "as the project has it" first, then each recipe.
std::vector<Choice> frame_recipe_choices(const model::Project& project, const model::Frame& frame);

std::vector<Choice> shop_recipe_choices(const model::Project& project);

// For good, or to come apart with one of the things that hold a screw.
std::vector<Choice> joint_hold_choices(const model::Project& project, const JointName& joint);

// What is said of the joint now; an empty override where nothing is.
model::JointOverride joint_entry(const model::Project& project, const JointName& joint);

// States the joint anew; an entry that says nothing any more is taken out.
Change joint_change(const model::Project& project,
                    const std::string& frame,
                    const model::JointOverride& joint,
                    std::string label);

Change change_of(const Choice& choice);

// "tapped", "nuts", "rivet nuts".
std::string hold_words(model::ScrewHold hold);

}  // namespace editor
