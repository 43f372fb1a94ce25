#include "model/buying/what_if.h"

#include "model/schedule/shared_halves.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

bool is_whole(const BarPlan& plan) { return plan.too_long.empty() && plan.left_out.empty(); }

bool is_priced(const BarPlan& plan) {
    return std::ranges::all_of(plan.supply.offers,
                               [](const OfferedBar& it) { return it.price.has_value(); });
}

bool is_same(const OfferedBar& a, const OfferedBar& b) {
    return a.length == b.length && a.halved_from == b.halved_from;
}

// The plans in which money can be compared, and what they cost together.
struct Compared {
    std::vector<Index> stocks;
    Cents cost = 0;
    bool is_proven = true;

    bool has(Index stock) const { return std::ranges::find(stocks, stock) != stocks.end(); }
};

Compared compared(const std::vector<BarPlan>& plans) {
    Compared all;
    for (const auto& plan : plans) {
        if (!is_whole(plan) || !is_priced(plan)) continue;
        all.stocks.push_back(plan.stock);
        all.cost += plan.cost;
        all.is_proven = all.is_proven && plan.is_cheapest;
    }
    return all;
}

class WhatIf {
public:
    WhatIf(const Project& project,
           const Catalogue& catalogue,
           const Resolved& resolved,
           const std::vector<BarPlan>& plans,
           const PlanWish& wish)
        : project_{project},
          catalogue_{catalogue},
          resolved_{resolved},
          plans_{plans},
          wish_{wish},
          now_{compared(plans)} {}

    std::vector<WithoutLength> all() const {
        std::vector<WithoutLength> all;
        for (const auto& plan : plans_) {
            if (!now_.has(plan.stock) || is_told_before(plan)) continue;
            for (const auto& offer : plan.supply.offers) all.push_back(without(plan, offer));
        }
        return all;
    }

private:
    // A seller has one row for all stocks of a section; without one each states its own bars.
    bool is_sold_as(Index one, const Stock& other) const {
        const auto& stock = project_.stock[one];
        if (!wish_.supply) return stock.name == other.name;
        return stock.section == other.section && stock.alloy == other.alloy;
    }

    bool is_told_before(const BarPlan& plan) const {
        return std::ranges::any_of(plans_, [&](const BarPlan& it) {
            return it.stock < plan.stock && now_.has(it.stock) &&
                   is_sold_as(it.stock, project_.stock[plan.stock]);
        });
    }

    WithoutLength without(const BarPlan& plan, const OfferedBar& offer) const {
        WithoutLength it{.stock = plan.stock,
                         .length = offer.length,
                         .halved_from = offer.halved_from,
                         .with = now_.cost,
                         .cost = now_.cost,
                         .is_proven = now_.is_proven};
        for (const auto& other : plans_) {
            if (is_sold_as(plan.stock, project_.stock[other.stock]))
                it.used += static_cast<int>(bars_taken(other.bars, offer));
        }
        if (it.used > 0) plan_without(it, offer);
        return it;
    }

    // All stocks again: cuts that become free, and bars that run short, are others' business too.
    void plan_without(WithoutLength& it, const OfferedBar& offer) const {
        PlanWish wish = wish_;
        wish.supply = [&](const Stock& stock) {
            auto supply =
                wish_.supply ? wish_.supply(stock) : bar_supply(project_, resolved_, stock);
            if (is_sold_as(it.stock, stock))
                std::erase_if(supply.offers, [&](const auto& own) { return is_same(own, offer); });
            return supply;
        };
        const auto plans = bar_plans(project_, catalogue_, resolved_, wish);
        const auto then = compared(plans);
        it.cost.reset();
        it.is_proven = it.is_proven && then.is_proven;
        if (std::ranges::all_of(now_.stocks, [&](Index stock) { return then.has(stock); }))
            it.cost = cost_of(plans);
    }

    Cents cost_of(const std::vector<BarPlan>& plans) const {
        Cents cost = 0;
        for (const auto& plan : plans) cost += now_.has(plan.stock) ? plan.cost : 0;
        return cost;
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    const std::vector<BarPlan>& plans_;
    const PlanWish& wish_;
    Compared now_;
};

}  // namespace

std::vector<WithoutLength> what_if_without(const Project& project,
                                           const Catalogue& catalogue,
                                           const Resolved& resolved,
                                           const std::vector<BarPlan>& plans,
                                           const PlanWish& wish) {
    return WhatIf{project, catalogue, resolved, plans, wish}.all();
}

}  // namespace model
