// The temporary pins of one joint. Only files of this folder use it.
#pragma once

#include "model/assembly/assembly_order.h"

namespace model {

// How many and of which size as by sheet_pins.h; the outermost holes first (from memory: corners
// first).
StepPins pins_of(const Catalogue& catalogue, const Resolved& resolved, Index joint);

}  // namespace model
