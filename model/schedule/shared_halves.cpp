#include "model/schedule/shared_halves.h"

#include "model/schedule/bar_stock.h"
#include "model/schedule/bars_sold.h"

#include <algorithm>

namespace model {
namespace {

void take_off(BarPlan& plan, Cents cents) {
    plan.cost -= cents;
    plan.least_cost = std::min(plan.least_cost, plan.cost);
    plan.is_cheapest = plan.cost == plan.least_cost;
}

BarsSold as_sold(const HalfBar& half) {
    return {.stock = half.stock,
            .length = half.whole,
            .is_halved = true,
            .price = half.price,
            .count = 1};
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

std::vector<HalfBar> halves_to_buy(const std::vector<BarPlan>& plans) {
    std::vector<HalfBar> halves;
    for (const auto& plan : plans) {
        for (const auto& bar : plan.bars) {
            if (bar.from != BarFrom::shop || bar.halved_from == 0) continue;
            halves.push_back({plan.stock, bar.length, bar.halved_from, bar.price});
        }
    }
    return halves;
}

std::vector<OddHalf> odd_halves(const Project& project, const std::vector<HalfBar>& halves) {
    const auto is_same = [&](const HalfBar& a, const HalfBar& b) {
        return is_same_goods(project, as_sold(a), as_sold(b));
    };
    std::vector<OddHalf> odd;
    for (const auto& half : halves) {
        const auto same = std::ranges::find_if(odd, [&](const OddHalf& it) {
            return it.half.stock == half.stock && is_same(it.half, half);
        });
        if (same == odd.end()) {
            odd.push_back({.half = half});
        } else {
            odd.erase(same);
        }
    }
    for (auto one = odd.begin(); one != odd.end(); ++one) {
        if (one->other != no_index) continue;
        const auto other = std::find_if(one + 1, odd.end(), [&](const OddHalf& it) {
            return it.other == no_index && is_same(it.half, one->half);
        });
        if (other == odd.end()) continue;
        one->other = other->half.stock;
        other->other = one->half.stock;
    }
    return odd;
}

}  // namespace model
