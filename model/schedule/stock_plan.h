// One stock's bars planned, without a look at the others.
#pragma once

#include "model/schedule/bar_plan.h"
#include "model/schedule/saw_seen.h"

#include <vector>

namespace model {

struct StockTask {
    BarPlan begun;  // stock and supply
    SawSeen saw;
    std::vector<Index> pieces;  // longest first
};

// Of every stock that pieces are cut from or that has bars at the saw, in the project's order.
std::vector<StockTask> stock_tasks(const Project& project,
                                   const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   const PlanWish& wish);

// The plan of a task by that supply, which may be less than its own.
BarPlan stock_plan(const Resolved& resolved,
                   const StockTask& task,
                   BarSupply supply,
                   const PlanWish& wish);

}  // namespace model
