// Which steps put something on that no screw holds yet. Only files of this folder use it.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// Notes of all that is put on in which step it is held, and gives every step that is called screwed
// on, and holds nothing of what it puts on, its true name.
void name_loose(const Resolved& resolved, std::vector<AssemblyStep>& steps);

// Whether what a step of what comes apart puts on is held in a later step only, or never.
bool is_put_on_loose(const std::vector<AssemblyStep>& steps, Index step, const AssemblyMove& move);

}  // namespace model
