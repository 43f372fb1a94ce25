// Faults in what is stated that no later step would meet: names and references of things that are
// kept but do not shape the skeleton, and shop entries that the catalogue lacks.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// Fasteners and drills of the shop that the catalogue does not have.
void check_shop(const Shop& shop, const Catalogue& catalogue, std::vector<Finding>& findings);

// Bays, panels and loads of a frame: their planes and bays must be there.
void check_kept_things(const Frame& frame, std::vector<Finding>& findings);

}  // namespace model
