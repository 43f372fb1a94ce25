// Bays of a frame once a notch is taken out of it, and whether panels, loads and braces can stay.
#pragma once

#include "model/project/change.h"
#include "model/project/step_over_edges.h"

namespace model {

// Parts each bay that the notch reaches into; the largest part keeps its name. Error: a panel whose
// face would be cut or parted, a panel or load in a bay that goes, a point load, a diagonal or a
// leaning member in the way.
Changed part_bays(Frame& frame, const Stepping& it, const DimensionValues& values);

}  // namespace model
