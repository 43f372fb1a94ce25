// During which steps of the assembly temporary pins hold a joint.
#pragma once

#include "model/assembly/assembly_order.h"

#include <vector>

namespace model {

// Both in AssemblyOrder::steps: the pins go in during the first of them, and out for the fasteners
// during the last. Without any step: `first` behind `last`.
struct PinnedSteps {
    Index first = 1;
    Index last = 0;
};

// One for each joint of `resolved`. What no step pins or sets counts as pinned from the first step
// of its frame to the last.
std::vector<PinnedSteps> pinned_steps(const AssemblyOrder& order, const Resolved& resolved);

}  // namespace model
