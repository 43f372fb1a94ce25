// Faults in what is stated that no later step would meet: names and references of things that are
// kept but do not shape the skeleton, and shop entries that the catalogue lacks.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"
#include "model/resolve/values.h"

#include <vector>

namespace model {

// Fasteners and drills of the shop that the catalogue does not have.
void check_shop(const Shop& shop, const Catalogue& catalogue, std::vector<Finding>& findings);

// Obstacles, and the bars and offcuts of stock: their names and formulas.
void check_room(const Project& project, Values& values, std::vector<Finding>& findings);

// Bays, panels, loads and diagonals of a frame: their names, formulas, planes, bays and stock.
void check_kept_things(const Project& project,
                       const Frame& frame,
                       Values& values,
                       std::vector<Finding>& findings);

}  // namespace model
