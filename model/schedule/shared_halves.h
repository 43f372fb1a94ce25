// Halves of bars: a seller gives whole ones, whose two halves may serve two stocks.
#pragma once

#include "model/resolve/resolved.h"
#include "model/schedule/bar_plan.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace model {

// How many of the bars are that offer's.
std::ptrdiff_t bars_taken(const std::vector<PlannedBar>& bars, const OfferedBar& offer);

// Plans of stocks that share a seller, each of which counts the other half of its own odd one: two
// odd halves are one bar, and each plan pays for its own. The last of an odd number stays as it is.
void unite_halves(const Resolved& resolved, std::vector<BarPlan>& plans);

// Half a bar that is to be bought.
struct HalfBar {
    Index stock = 0;             // whose pieces are cut from it
    Nm length = 0;               // its own
    Nm whole = 0;                // of the bar as it is sold
    std::optional<Cents> price;  // as PlannedBar::price
};

// In the order of the plans.
std::vector<HalfBar> halves_to_buy(const std::vector<BarPlan>& plans);

// The last of an odd number of halves that a stock takes of bars that are the same goods.
struct OddHalf {
    HalfBar half;
    Index other = no_index;  // the stock that gets the other half of its bar; none: it is left over
};

// Who shares a bar: of the stocks that have an odd half of the same goods (see is_same_goods) the
// first and the second, in the order of `halves`, then the third and the fourth. The last of an odd
// number has its bar to itself.
std::vector<OddHalf> odd_halves(const Project& project, const std::vector<HalfBar>& halves);

}  // namespace model
