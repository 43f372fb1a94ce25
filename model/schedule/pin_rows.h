// The temporary pins of the dry fit, as they are bought. Only files of this folder use it.
#pragma once

#include "model/schedule/tables.h"

namespace model {

// Pins are taken out again before the fasteners go in, so none is spent: enough of a size for the
// step of the order that holds most of them at once serves all steps. Without an order (null) the
// whole of a frame counts as pinned at once, and the frame that needs most.
std::vector<FastenerRow> pin_rows(const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const AssemblyOrder* order);

}  // namespace model
