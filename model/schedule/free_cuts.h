// Cuts that a supplier makes for nothing: so many in one order, whichever stock they are for.
#pragma once

#include "model/schedule/bar_plan.h"

#include <vector>

namespace model {

// Plans of stocks that share a seller's bars.
struct GroupPlans {
    std::vector<BarPlan> paid;         // as if every cut were paid for
    std::vector<BarPlan> without_fee;  // as if none were; empty: not asked
};

// Whether plans without a fee can tell more: some cuts are free, and bars are cut at a fee.
bool want_plans_without_fee(const std::vector<GroupPlans>& groups);
bool can_be_cut_at_a_fee(const std::vector<BarPlan>& plans);

BarSupply without_fee(BarSupply supply);

// Of each group the plans that together cost least once the free cuts are taken off, which come to
// the first plans. Proven cheapest where no plan can cost less: neither one whose cuts are all paid
// for, less what is free, nor one whose cuts cost nothing.
std::vector<BarPlan> with_free_cuts(std::vector<GroupPlans> groups);

}  // namespace model
