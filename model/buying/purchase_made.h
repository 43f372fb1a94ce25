// A purchase as it is noted when it is made.
#pragma once

#include "model/buying/estimate.h"
#include "model/project/edit.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

// All that the estimate prices, or its bars alone, with their cutting; delivery and tax with
// either. Bars in hand are those of which somebody cuts a piece without having said that they were
// bought: their sums are those of the estimate, which the purchase says, and they came with the
// order that was paid to that seller before, if one was: its delivery is not paid again, and cuts
// that were free in it are free once.
enum class BoughtPart { bars, bars_in_hand, all };

// "taken as bought ...": the note of bars in hand.
inline constexpr std::string_view note_of_bars_in_hand =
    "taken as bought at the plan's prices, since a piece of it was cut";

// Those of whose stock there are more bars than before.
std::vector<BarPlan> plans_of_new_bars(std::vector<BarPlan> plans,
                                       const Project& before,
                                       const Project& after);

// What is in the estimate becomes what was paid. By a supplier's list things without a price are
// not sold there and stay to be bought, but for bars. It has no number yet.
Purchase purchase_of(const Estimate& estimate, BoughtPart part, std::string date);

// Whether it was noted so, whatever its maker has put right of it since.
bool is_of_bars_in_hand(const Purchase& purchase);

// The highest number that a purchase of the table or of the project has, or bars came with.
int last_number(const Purchases& purchases, const Project& project);

// By which the project is to know it: of one that stands in the table and does not count, of which
// there are no bars, and which is the very same, that one's, so that it counts again; else one that
// was given to no other, behind `last`: what was struck out of the table may be in a file yet.
int number_for(const Purchases& purchases,
               const Purchase& purchase,
               const Project& before,
               int last = 0);

// The edits that bring the bars of these plans, once they say with which purchase they came, and
// one that notes it. The plans are those of `before` by which the edits were made; edits that come
// behind them may mark cuts.
std::vector<Edit> noted(std::vector<Edit> edits,
                        const Project& before,
                        const std::vector<BarPlan>& plans,
                        int number);

// With one more, which stands last, or as they are where it stands there already. Those that do not
// count stay: redo brings them back, and sums in them may have been put right.
Purchases with_purchase(Purchases purchases, Purchase purchase);

}  // namespace model
