// The members of a frame once a notch is taken out of it: those in the way are cut at it, and its
// edges get their own.
#pragma once

#include "model/project/change.h"
#include "model/project/step_over_edges.h"

namespace model {

// Error: no member of angle from which a re-entrant edge could be made.
Changed reframe(Frame& frame, const Stepping& it);

}  // namespace model
