// Panels: sheet on the faces of bays, cut to the frame and fastened to it.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"
#include "model/resolve/values.h"

namespace model {

// Once the frames stand and are fastened: puts the panels behind the pieces of their frames, with
// their joints, fasteners and holes. What is impossible becomes a finding.
void put_in_panels(const Project& project,
                   const Catalogue& catalogue,
                   Values& values,
                   Resolved& resolved);

}  // namespace model
