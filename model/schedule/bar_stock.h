// The bars of one stock as a plan sees them: what is at hand first, then what can be bought.
#pragma once

#include "model/schedule/bar_plan.h"
#include "model/schedule/saw_seen.h"

#include <vector>

namespace model {

// A bar of which there are `left`; cuts begin at `first_start`.
struct PlanStock {
    Nm length = 0;
    int left = 0;
    BarFrom from = BarFrom::shop;
    Index at_saw = no_index;
    Nm first_start = 0;
    Nm end_trim = 0;
    std::optional<Cents> price;  // as stated
    Cents counted = 0;           // twice what it counts in a plan's cost
    Nm halved_from = 0;
    std::optional<Cents> halved_price{};  // of the whole of a halved bar, with its cut

    Nm room() const { return length - end_trim - first_start; }
};

// Bars at the saw, offcuts shortest first, bars at home and those to be bought, longest first.
std::vector<PlanStock> plan_stock(const Resolved& resolved,
                                  const BarSupply& supply,
                                  const SawSeen& saw);

// A supplier sells whole bars: what the other half counts where an odd number of halves is bought,
// twice.
Cents cost_of_odd_halves(const std::vector<PlanStock>& stock, const std::vector<PlannedBar>& bars);

// A bar of it with nothing cut yet.
PlannedBar planned_bar(const PlanStock& stock);

// Pieces, longest first, of which each has room in some bar of which there is one.
struct PlanTask {
    std::vector<PlanStock> stock;
    std::vector<Index> pieces;
};

// Both add bars to a plan that has those at the saw already, as in Stock::at_saw, and cuts to
// these; and give what is left out and what it costs.
void fit_first(const Resolved& resolved, const PlanTask& task, BarPlan& plan);

struct NestEffort {
    std::function<bool()> go_on;       // as PlanWish::go_on
    std::optional<std::int64_t> work;  // engine::NestLimits::work; none: as usual
    bool may_hold_badly = true;        // rather a last piece that the vice holds badly than none
};

// False, and nothing changed, where no plan was found that holds all pieces.
bool nest_into(const Resolved& resolved,
               const PlanTask& task,
               const NestEffort& effort,
               BarPlan& plan);

}  // namespace model
