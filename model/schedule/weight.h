// What pieces weigh.
#pragma once

#include "engine/measure/tape.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <string>
#include <vector>

namespace model {

// In kg, in the order of Resolved::pieces: the section's area times the length, less sloping ends
// and holes, times the alloy's density. Notches and fasteners are left out. A panel
// counts with the density of its material, or as nothing where the catalogue does not know that.
// Other sheet, and an alloy that the catalogue does not know, count with the density of aluminium
// (that of `Alloy{}`).
std::vector<double> piece_weights_kg(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved);

// "2.31 lb" for a tape in inches, "1.05 kg" for a metric one; to three figures, "0 lb" for nothing.
std::string weight_text(double kg, const engine::TapeStyle& shown);

}  // namespace model
