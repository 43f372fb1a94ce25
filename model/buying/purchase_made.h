// A purchase as it is noted when it is made.
#pragma once

#include "model/buying/estimate.h"

#include <string>

namespace model {

// All that the estimate prices, or its bars alone, with their cutting; delivery and tax with
// either.
enum class BoughtPart { bars, all };

// What is in the estimate becomes what was paid. By a supplier's list things without a price are
// not sold there and stay to be bought, but for bars. `after` is the project once the bars have
// come to the saw.
Purchase purchase_of(const Estimate& estimate,
                     BoughtPart part,
                     const Project& before,
                     const Project& after,
                     std::string date);

// With one more. Those that are not in force any more, since their step was undone, are let go.
Purchases with_purchase(const Purchases& purchases, Purchase purchase, const Project& before);

}  // namespace model
