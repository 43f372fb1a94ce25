// A purchase as it is noted when it is made.
#pragma once

#include "model/buying/estimate.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

// All that the estimate prices, or its bars alone, with their cutting; delivery and tax with
// either. Bars in hand are those of which somebody cuts a piece without having said that they were
// bought: their sums are those of the estimate, which the purchase says, and they came with the
// delivery that was paid to that seller before, if one was.
enum class BoughtPart { bars, bars_in_hand, all };

// "taken as bought ...": the note of bars in hand.
inline constexpr std::string_view note_of_bars_in_hand =
    "taken as bought at the plan's prices, since a piece of it was cut";

// Those of whose stock there are more bars than before.
std::vector<BarPlan> plans_of_new_bars(std::vector<BarPlan> plans,
                                       const Project& before,
                                       const Project& after);

// What is in the estimate becomes what was paid. By a supplier's list things without a price are
// not sold there and stay to be bought, but for bars. `after` is the project once the bars have
// come to the saw.
Purchase purchase_of(const Estimate& estimate,
                     BoughtPart part,
                     const Project& before,
                     const Project& after,
                     std::string date);

// Whether it was noted so, whatever its maker has put right of it since.
bool is_of_bars_in_hand(const Purchase& purchase);

// With one more, which stands last. Those that do not count any more, since their step was undone,
// are let go where somebody says what he bought. Who cuts a piece has said nothing: all others stay
// in the table then; and where one of them that does not count is of the very same bars and nothing
// else, it stands last in the place of the new one, with the sum that may have been put right in
// it.
Purchases with_purchase(const Purchases& purchases, Purchase purchase, const Project& before);

}  // namespace model
