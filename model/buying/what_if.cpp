#include "model/buying/what_if.h"

#include <algorithm>

namespace model {
namespace {

bool is_whole(const BarPlan& plan) { return plan.too_long.empty() && plan.left_out.empty(); }

bool is_priced(const BarPlan& plan) {
    return std::ranges::all_of(plan.supply.offers,
                               [](const OfferedBar& it) { return it.price.has_value(); });
}

int bars_in_use(const BarPlan& plan, const OfferedBar& offer) {
    return static_cast<int>(std::ranges::count_if(plan.bars, [&](const PlannedBar& bar) {
        return bar.from == BarFrom::shop && bar.length == offer.length &&
               bar.halved_from == offer.halved_from;
    }));
}

BarSupply supply_without(const BarSupply& supply, const OfferedBar& offer) {
    BarSupply rest = supply;
    std::erase_if(rest.offers, [&](const OfferedBar& it) {
        return it.length == offer.length && it.halved_from == offer.halved_from;
    });
    return rest;
}

// Planned for that stock alone: the others get no bars, which is soon done.
const BarPlan* plan_without(std::vector<BarPlan>& room,
                            const Project& project,
                            const Catalogue& catalogue,
                            const Resolved& resolved,
                            const BarPlan& plan,
                            const OfferedBar& offer,
                            PlanWish wish) {
    const auto rest = supply_without(plan.supply, offer);
    const auto& name = project.stock[plan.stock].name;
    wish.supply = [&](const Stock& stock) { return stock.name == name ? rest : BarSupply{}; };
    room = bar_plans(project, catalogue, resolved, wish);
    const auto at = std::ranges::find(room, plan.stock, &BarPlan::stock);
    return at == room.end() ? nullptr : &*at;
}

}  // namespace

std::vector<WithoutLength> what_if_without(const Project& project,
                                           const Catalogue& catalogue,
                                           const Resolved& resolved,
                                           const std::vector<BarPlan>& plans,
                                           const PlanWish& wish) {
    std::vector<WithoutLength> all;
    std::vector<BarPlan> room;
    for (const auto& plan : plans) {
        if (!is_whole(plan) || !is_priced(plan)) continue;
        for (const auto& offer : plan.supply.offers) {
            WithoutLength it{.stock = plan.stock,
                             .length = offer.length,
                             .halved_from = offer.halved_from,
                             .used = bars_in_use(plan, offer),
                             .with = plan.cost,
                             .cost = plan.cost,
                             .is_proven = plan.is_cheapest};
            if (it.used > 0) {
                const auto* rest =
                    plan_without(room, project, catalogue, resolved, plan, offer, wish);
                it.cost.reset();
                if (rest != nullptr && is_whole(*rest)) it.cost = rest->cost;
                it.is_proven = it.is_proven && rest != nullptr && rest->is_cheapest;
            }
            all.push_back(it);
        }
    }
    return all;
}

}  // namespace model
