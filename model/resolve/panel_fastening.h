// Fasteners of a panel: a row along each member that the sheet touches, at the pitch.
#pragma once

#include "model/resolve/panel_place.h"

namespace model {

// Adds joints, fasteners and holes of one fixed panel, which is piece `number` already. The panel
// is the pattern: the member is match-drilled through it. Faults become findings.
void fasten_panel(const Project& project,
                  const Catalogue& catalogue,
                  const PlacedPanel& panel,
                  Index number,
                  Resolved& resolved);

}  // namespace model
