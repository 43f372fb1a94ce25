// The bars where a repeated bay meets what lies beside it: see the edit RepeatBay.
#pragma once

#include "model/project/repeat_bars.h"

namespace model {

// Joins the bars that were added to what goes on in their line, where a bar on the line of their
// original goes on too, and turns legs so that ends are held: where the copies stand out beyond the
// bays beside the bay, and where their bars end at a face that others pass. `before`: the frame
// without them. Error: bars would have to hold others on both sides.
Changed fit_copies(Frame& frame,
                   const Frame& before,
                   const Repeated& repeated,
                   const PlanePlaces& places,
                   const std::vector<AddedMember>& added);

}  // namespace model
