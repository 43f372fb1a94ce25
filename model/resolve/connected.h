// Whether a frame hangs together.
#pragma once

#include "model/project/project.h"
#include "model/resolve/resolved.h"

namespace model {

// A finding `not_joined` for each group of members of a frame that lap none of the largest one.
// Laps without room for a fastener have findings of their own.
void report_loose_groups(const Project& project, Resolved& resolved);

}  // namespace model
