// Which steps put something on that no screw holds yet. Only files of this folder use it.
#pragma once

#include "model/assembly/assembly_order.h"

#include <vector>

namespace model {

// Gives every step that is called screwed on, and sets none of the screws of what it puts on, its
// true name.
void name_loose(std::vector<AssemblyStep>& steps);

}  // namespace model
