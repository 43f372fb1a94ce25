// What the schedules themselves have to say, beside what resolve found.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/bar_supply.h"
#include "model/resolve/resolved.h"

#include <functional>
#include <vector>

namespace model {

// Pieces that can be cut from no bar, and pieces that were cut and are of no use. Codes:
// no_bar_long_enough, no_bars_offered, not_enough_bars, bar_length_refused, bar_not_brought_home,
// bar_without_price, price_list_not_read,
// cut_piece_unused.
// `supply` is that of PlanWish.
std::vector<Finding> bar_findings(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const std::function<BarSupply(const Stock&)>& supply = {});

// Those of resolve and those of the bars; errors first, then warnings, then notes.
std::vector<Finding> all_findings(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const std::function<BarSupply(const Stock&)>& supply = {});

}  // namespace model
