// Stocks that are cut from the same bars of a seller, who has each of them once.
#pragma once

#include "model/schedule/stock_plan.h"

#include <vector>

namespace model {

// The plans of stocks that share a supply, in the order of the tasks; together they take no more
// bars than there are. Each for itself is cheapest; together they may want more than there is. Who
// takes first then decides, and where somebody is left without in every order, whether another one
// can do without the bars of which there are few. In a hurry the stated order will do, unless it
// leaves out more pieces than all apart do: that bars run out is not said where they are enough.
std::vector<BarPlan> plans_sharing(const Resolved& resolved,
                                   const std::vector<const StockTask*>& tasks,
                                   const PlanWish& wish);

}  // namespace model
