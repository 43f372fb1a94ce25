// Whether a frame hangs together.
#pragma once

#include "model/project/project.h"
#include "model/resolve/resolved.h"

namespace model {

// A finding `not_joined` for each group of pieces of a frame that no fastener joins to the largest
// one. Joints and fasteners are in place.
void report_loose_groups(const Project& project, Resolved& resolved);

}  // namespace model
