// Fasteners of two laps that would run into each other, above all tails in the corner of an angle.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

namespace model {

// A finding `fasteners_meet` for each pair of joints; fasteners and holes are in place already.
void report_fasteners_that_meet(const Project& project,
                                const Catalogue& catalogue,
                                Resolved& resolved);

}  // namespace model
