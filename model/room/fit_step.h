// What a step over an obstacle wants besides its clearance: room for heads and tails, and how far
// its planes must be from the frame's others.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"

namespace model {

// The edit with what it leaves empty worked out by trying it.
// `standing`: the longest of the heads and tails that would come nearer to the obstacle than is
// wanted, up to a mark that holes lie on; none where none does. It is found by setting the frame's
// own fasteners, so it is more where tails look at the obstacle than where heads do. `apart`: one
// such mark where all members of the step find room so, as legs that turn away from one another
// always do; otherwise two of the frame's widest legs, where they do so whichever way they turn.
StepOver fitted_step(const Project& project, const Catalogue& catalogue, StepOver edit);

}  // namespace model
