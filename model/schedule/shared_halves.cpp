#include "model/schedule/shared_halves.h"

#include "model/schedule/bar_stock.h"

#include <algorithm>

namespace model {
namespace {

void take_off(BarPlan& plan, Cents cents) {
    plan.cost -= cents;
    plan.least_cost = std::min(plan.least_cost, plan.cost);
    plan.is_cheapest = plan.cost == plan.least_cost;
}

}  // namespace

std::ptrdiff_t bars_taken(const std::vector<PlannedBar>& bars, const OfferedBar& offer) {
    return std::ranges::count_if(bars, [&](const PlannedBar& bar) {
        return bar.from == BarFrom::shop && bar.length == offer.length &&
               bar.halved_from == offer.halved_from;
    });
}

void unite_halves(const Resolved& resolved, std::vector<BarPlan>& plans) {
    if (plans.size() < 2) return;
    for (const auto& half : plan_stock(resolved, plans.front().supply, {})) {
        if (half.halved_from == 0) continue;
        const OfferedBar offer{.length = half.length, .halved_from = half.halved_from};
        BarPlan* odd = nullptr;
        for (auto& plan : plans) {
            if (bars_taken(plan.bars, offer) % 2 == 0) continue;
            if (odd == nullptr) {
                odd = &plan;
                continue;
            }
            // What the whole bar costs is `counted`; each has paid for all of it.
            take_off(*odd, half.counted / 2);
            take_off(plan, half.counted - half.counted / 2);
            odd = nullptr;
        }
    }
}

}  // namespace model
