#include "model/schedule/shared_supply.h"

#include "model/schedule/shared_halves.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <utility>

namespace model {
namespace {

bool is_limited(const OfferedBar& offer) { return offer.left != std::numeric_limits<int>::max(); }

// What other plans leave of a supply: the seller has his bars once.
BarSupply supply_left(const std::vector<const BarPlan*>& before, BarSupply supply) {
    for (auto& offer : supply.offers) {
        if (!is_limited(offer)) continue;
        for (const auto* plan : before)
            offer.left = std::max(0, offer.left - static_cast<int>(bars_taken(plan->bars, offer)));
    }
    return supply;
}

bool is_within(const BarPlan& plan, const BarSupply& supply) {
    return std::ranges::all_of(supply.offers, [&](const OfferedBar& offer) {
        return bars_taken(plan.bars, offer) <= offer.left;
    });
}

// Plans of stocks that are alike, by the order in which they take bars.
struct SharedPlans {
    std::vector<BarPlan> plans;  // as the tasks
    std::size_t left_out = 0;
    Cents cost = 0;

    // Of plans that each had all bars to itself.
    static SharedPlans apart(std::vector<BarPlan> plans) {
        SharedPlans all{.plans = std::move(plans)};
        for (const auto& plan : all.plans) all.count(plan);
        return all;
    }
    void count(const BarPlan& plan) {
        left_out += plan.left_out.size() + plan.too_long.size();
        cost += plan.cost;
    }
    bool is_better_than(const SharedPlans& other) const {
        return left_out != other.left_out ? left_out < other.left_out : cost < other.cost;
    }
    bool is_as_good_as(const SharedPlans& other) const {
        return left_out <= other.left_out && cost <= other.cost;
    }
};

// Of a plan from fewer bars nobody has proven more than of the one from all of them.
void prove_no_more_than(const BarPlan& from_all, BarPlan& plan) {
    plan.least_cost = std::min(from_all.least_cost, plan.cost);
    plan.is_cheapest = plan.cost == plan.least_cost;
}

SharedPlans shared_in_order(const Resolved& resolved,
                            const std::vector<const StockTask*>& tasks,
                            const std::vector<BarPlan>& apart,
                            const std::vector<std::size_t>& order,
                            const PlanWish& wish) {
    SharedPlans all{.plans = apart};
    std::vector<const BarPlan*> before;
    for (const auto i : order) {
        auto left = supply_left(before, tasks[i]->begun.supply);
        auto& plan = all.plans[i];
        if (!is_within(plan, left)) {
            plan = stock_plan(resolved, *tasks[i], std::move(left), wish);
            prove_no_more_than(apart[i], plan);
        }
        before.push_back(&plan);
        all.count(plan);
    }
    return all;
}

// The next order to try: all of three, of more each once at the head. False where there is none.
bool next_order(std::vector<std::size_t>& order, std::size_t turn) {
    constexpr std::size_t most_permuted = 3;
    if (order.size() <= most_permuted) return std::next_permutation(order.begin(), order.end());
    std::rotate(order.begin(), order.begin() + 1, order.end());
    return turn < order.size();
}

// With that one first, and with it last.
void try_at_both_ends(const Resolved& resolved,
                      const std::vector<const StockTask*>& tasks,
                      const std::vector<BarPlan>& plans,
                      std::size_t one,
                      const PlanWish& wish,
                      SharedPlans& best) {
    std::vector<std::size_t> order(tasks.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::rotate(order.begin(), order.begin() + static_cast<std::ptrdiff_t>(one), order.end());
    for (int end = 0; end < 2; ++end) {
        auto other = shared_in_order(resolved, tasks, plans, order, wish);
        if (other.is_better_than(best)) best = std::move(other);
        std::rotate(order.begin(), order.begin() + 1, order.end());
    }
}

// Each in turn does without bars of which there are few, which it takes alone and another may need,
// until nobody is left without.
void give_way(const Resolved& resolved,
              std::vector<const StockTask*> tasks,
              const SharedPlans& apart,
              const PlanWish& wish,
              SharedPlans& best) {
    for (std::size_t i = 0; i < tasks.size(); ++i) {
        const auto& own = *tasks[i];
        for (std::size_t k = 0; k < own.begun.supply.offers.size(); ++k) {
            const auto& scarce = own.begun.supply.offers[k];
            if (best.left_out <= apart.left_out) return;
            if (!is_limited(scarce) || bars_taken(apart.plans[i].bars, scarce) == 0) continue;
            StockTask without = own;
            without.begun.supply.offers[k].left = 0;
            tasks[i] = &without;
            auto plans = apart.plans;
            plans[i] = stock_plan(resolved, without, without.begun.supply, wish);
            prove_no_more_than(apart.plans[i], plans[i]);
            try_at_both_ends(resolved, tasks, plans, i, wish, best);
            tasks[i] = &own;
        }
    }
}

}  // namespace

std::vector<BarPlan> plans_sharing(const Resolved& resolved,
                                   const std::vector<const StockTask*>& tasks,
                                   const PlanWish& wish) {
    std::vector<BarPlan> alone;
    for (const auto* task : tasks)
        alone.push_back(stock_plan(resolved, *task, task->begun.supply, wish));
    const auto apart = SharedPlans::apart(std::move(alone));
    std::vector<std::size_t> order(tasks.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    auto best = shared_in_order(resolved, tasks, apart.plans, order, wish);
    const bool is_quick = wish.effort == PlanEffort::first_fit;  // follows a drag
    const auto is_enough = [&] {
        return is_quick ? best.left_out <= apart.left_out : best.is_as_good_as(apart);
    };
    for (std::size_t turn = 1; !is_enough() && next_order(order, turn); ++turn) {
        auto other = shared_in_order(resolved, tasks, apart.plans, order, wish);
        if (other.is_better_than(best)) best = std::move(other);
    }
    give_way(resolved, tasks, apart, wish, best);
    for (std::size_t i = 0; i < tasks.size(); ++i) best.plans[i].supply = tasks[i]->begun.supply;
    return std::move(best.plans);
}

}  // namespace model
