// The lines of an estimate, kind by kind.
#pragma once

#include "model/buying/estimate.h"
#include "model/buying/sheet_layout.h"

namespace model {

// Adds lines, what has no price, and the weight of what is bought.
void add_bar_lines(Estimate& estimate,
                   const Project& project,
                   const Catalogue& catalogue,
                   const std::vector<BarPlan>& plans,
                   const PriceList* prices);

void add_sheet_lines(Estimate& estimate,
                     const Project& project,
                     const Catalogue& catalogue,
                     const std::vector<SheetPlan>& plans);

void add_box_lines(Estimate& estimate,
                   const Project& project,
                   const Catalogue& catalogue,
                   const Resolved& resolved,
                   const PriceList* prices);

}  // namespace model
