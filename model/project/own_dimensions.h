// Dimensions that a frame stands on, copied so that its copy stands on its own.
#pragma once

#include "model/project/project.h"

#include <set>
#include <string>

namespace model {

// Copies each dimension that formulas of `copy`, its origin apart, stand on, also through other
// dimensions, but for those that the room or the shop stands on; makes the formulas of `copy` use
// the copied ones. `places` say where the copy stands and stay: its planes may be measured from
// them. A dimension called after the frame `original` is then called after `copy`,
// another one by the name of `copy` before its own.
void give_own_dimensions(Project& project,
                         Frame& copy,
                         const std::string& original,
                         const std::set<std::string>& places);

}  // namespace model
