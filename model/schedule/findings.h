// What the schedules themselves have to say, beside what resolve found.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// A piece that fits no bar of its stock, a stock with no bar, bars that run out. Codes:
// no_bar_long_enough, no_bars_offered, not_enough_bars, bar_length_unreadable.
std::vector<Finding> bar_findings(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved);

// Those of resolve, then those of the bars.
std::vector<Finding> all_findings(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved);

}  // namespace model
