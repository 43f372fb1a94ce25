// A project resolved where it stands: what follows from it, and whether it fits into the room.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"
#include "model/room/scans.h"

namespace model {

// As resolve, with the findings of room_findings after its own. Pure and total as that is.
Resolved resolve_in_room(const Project& project,
                         const Catalogue& catalogue,
                         const ScanLibrary& scans = {});

}  // namespace model
