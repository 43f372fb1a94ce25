// What there is to say about one joint, beside its choices.
#pragma once

#include "editor/derived.h"
#include "editor/joint_list.h"

#include <vector>

namespace editor {

// Those that name the joint, the worst first.
std::vector<const model::Finding*> findings_of(const Derived& derived, const JointName& joint);

void draw_joint_findings(const Derived& derived, const JointName& joint);

}  // namespace editor
