// Halves of bars: a seller gives whole ones, whose two halves may serve two stocks.
#pragma once

#include "model/resolve/resolved.h"
#include "model/schedule/bar_plan.h"

#include <cstddef>
#include <vector>

namespace model {

// How many of the bars are that offer's.
std::ptrdiff_t bars_taken(const std::vector<PlannedBar>& bars, const OfferedBar& offer);

// Plans of stocks that share a seller, each of which counts the other half of its own odd one: two
// odd halves are one bar, and each plan pays for its own. The last of an odd number stays as it is.
void unite_halves(const Resolved& resolved, std::vector<BarPlan>& plans);

}  // namespace model
