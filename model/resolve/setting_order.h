// The order in which pieces are put on, where the tool reaches some rivets only before others are.
#pragma once

#include "model/resolve/fasten.h"

#include <span>
#include <vector>

namespace model {

// A joint whose rivets clear the tool only while other pieces are not on yet.
struct EarlyJoint {
    Index joint = 0;
    bool long_nose = false;
};

std::vector<EarlyJoint> early_joints(std::span<const LapPlan> plans);

// Of each such joint a note that names what is in the tool's way; of each frame the order that
// works, or a finding that names the joints of which none can be the first. Common practice; the
// reach of the tool is the shop's.
void report_setting_order(const Project& project,
                          std::span<const EarlyJoint> joints,
                          Resolved& resolved);

}  // namespace model
