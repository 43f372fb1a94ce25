#include "model/schedule/bar_plan.h"

#include "model/schedule/free_cuts.h"
#include "model/schedule/shared_halves.h"
#include "model/schedule/shared_supply.h"
#include "model/schedule/stock_plan.h"

#include <algorithm>
#include <set>
#include <utility>

namespace model {
namespace {

// The tasks whose stocks are sold as one thing. Without a seller each states its own bars, also
// where his list is not read.
std::vector<std::vector<const StockTask*>> sharing(const Project& project,
                                                   const std::vector<StockTask>& tasks,
                                                   bool has_seller) {
    std::vector<std::vector<const StockTask*>> groups;
    const auto goods = [&](const StockTask& task) {
        const auto& stock = project.stock[task.begun.stock];
        return std::pair{stock.section, stock.alloy};
    };
    for (const auto& task : tasks) {
        auto group = groups.end();
        if (has_seller && !task.begun.supply.list_not_read) {
            group = std::ranges::find_if(
                groups, [&](const auto& it) { return goods(*it.front()) == goods(task); });
        }
        if (group == groups.end()) {
            groups.push_back({&task});
        } else {
            group->push_back(&task);
        }
    }
    return groups;
}

std::vector<BarPlan> united_plans(const Resolved& resolved,
                                  const std::vector<const StockTask*>& group,
                                  const PlanWish& wish) {
    auto plans = plans_sharing(resolved, group, wish);
    unite_halves(resolved, plans);
    return plans;
}

// The same stocks with no more of those bars than that.
std::vector<BarPlan> plans_with_few(const Resolved& resolved,
                                    const std::vector<const StockTask*>& group,
                                    const OfferedBar& few,
                                    int left,
                                    const PlanWish& wish) {
    std::vector<StockTask> tasks;
    for (const auto* task : group) {
        tasks.push_back(*task);
        for (auto& offer : tasks.back().begun.supply.offers) {
            if (offer.length == few.length && offer.halved_from == few.halved_from)
                offer.left = std::min(offer.left, left);
        }
    }
    std::vector<const StockTask*> limited;
    for (const auto& task : tasks) limited.push_back(&task);
    return united_plans(resolved, limited, wish);
}

// Takes what costs less together and cuts as many pieces. Nobody has proven more of it than of what
// there was.
void take_cheaper(std::vector<BarPlan>& plans, std::vector<BarPlan> others) {
    Cents gain = 0;
    for (std::size_t i = 0; i < plans.size(); ++i) {
        const auto missing = [](const BarPlan& plan) {
            return plan.left_out.size() + plan.too_long.size();
        };
        if (missing(others[i]) > missing(plans[i])) return;
        gain += plans[i].cost - others[i].cost;
    }
    if (gain <= 0) return;
    for (std::size_t i = 0; i < plans.size(); ++i) {
        others[i].supply = std::move(plans[i].supply);
        others[i].least_cost = std::min(plans[i].least_cost, others[i].cost);
        others[i].is_cheapest = others[i].least_cost == others[i].cost;
        plans[i] = std::move(others[i]);
    }
}

// Where halves of one bar are all that a seller has, plans cost so many whole ones, and none costs
// something in between.
void count_whole_bars(BarPlan& plan) {
    const auto& offers = plan.supply.offers;
    if (offers.size() != 1 || offers[0].halved_from == 0) return;
    const Cents whole = offers[0].halved_price.value_or(0);
    if (whole <= 0) return;
    const Cents least = (plan.least_cost + whole - 1) / whole * whole;
    plan.least_cost = std::min(least, plan.cost);
    plan.is_cheapest = plan.cost == plan.least_cost;
}

// A seller's odd half is paid for as a whole bar, which the nest does not see: plans with one half
// less, and with none, may be cheaper.
std::vector<BarPlan> group_plans(const Resolved& resolved,
                                 const std::vector<const StockTask*>& group,
                                 const PlanWish& wish) {
    auto plans = united_plans(resolved, group, wish);
    if (wish.effort == PlanEffort::first_fit) return plans;
    const auto offers = plans.front().supply.offers;
    for (const auto& offer : offers) {
        if (offer.halved_from == 0) continue;
        std::ptrdiff_t used = 0;
        for (const auto& plan : plans) used += bars_taken(plan.bars, offer);
        if (used % 2 == 0) continue;
        for (const int left : std::set<int>{0, static_cast<int>(used) - 1})
            take_cheaper(plans, plans_with_few(resolved, group, offer, left, wish));
    }
    if (plans.size() == 1) count_whole_bars(plans.front());
    return plans;
}

}  // namespace

std::vector<BarPlan> bar_plans(const Project& project,
                               const Catalogue& catalogue,
                               const Resolved& resolved,
                               const PlanWish& wish) {
    auto tasks = stock_tasks(project, catalogue, resolved, wish);
    const auto groups = sharing(project, tasks, static_cast<bool>(wish.supply));
    std::vector<GroupPlans> planned;
    for (const auto& group : groups)
        planned.push_back({.paid = group_plans(resolved, group, wish), .without_fee = {}});
    if (wish.effort == PlanEffort::nested && want_plans_without_fee(planned)) {
        for (auto& task : tasks) task.begun.supply = without_fee(std::move(task.begun.supply));
        for (std::size_t i = 0; i < groups.size(); ++i) {
            if (can_be_cut_at_a_fee(planned[i].paid))
                planned[i].without_fee = group_plans(resolved, groups[i], wish);
        }
    }
    auto plans = with_free_cuts(std::move(planned));
    // A plan that leaves pieces out is cheap, and the cheapest of nothing.
    for (auto& plan : plans)
        plan.is_cheapest = plan.is_cheapest && plan.left_out.empty() && plan.too_long.empty();
    std::ranges::sort(plans, {}, &BarPlan::stock);
    return plans;
}

}  // namespace model
