// Panels on the bays of random frames: fixed, doors and drawer fronts, inset and over the members,
// with cut-outs.
#pragma once

#include "model/project/project.h"

#include "tests/support/dice.h"

namespace tests {

// Frames that have no bays are given some between planes that neighbour one another.
void add_random_panels(Dice& dice, model::Project& project, bool metric);

}  // namespace tests
