#include "model/schedule/bars_sold.h"

#include <algorithm>

namespace model {
namespace {

BarsSold one_sold(const PlannedBar& bar, Index stock) {
    const bool is_halved = bar.halved_from > 0;
    return {.stock = stock,
            .length = is_halved ? bar.halved_from : bar.length,
            .is_halved = is_halved,
            .price = bar.price,
            .count = 1};
}

}  // namespace

bool is_same_goods(const Project& project, const BarsSold& a, const BarsSold& b) {
    const auto& one = project.stock[a.stock];
    const auto& other = project.stock[b.stock];
    return one.section == other.section && one.alloy == other.alloy && a.length == b.length &&
           a.is_halved == b.is_halved && a.price == b.price;
}

std::vector<BarsSold> bars_sold(const Project& project, const std::vector<BarPlan>& plans) {
    std::vector<BarsSold> sold;
    for (const auto& plan : plans) {
        for (const auto& bar : plan.bars) {
            if (bar.from != BarFrom::shop) continue;
            const auto one = one_sold(bar, plan.stock);
            const auto same = std::ranges::find_if(
                sold, [&](const BarsSold& it) { return is_same_goods(project, it, one); });
            if (same == sold.end()) {
                sold.push_back(one);
            } else {
                ++same->count;
            }
        }
    }
    return sold;
}

int bars_to_buy(const Project& project, const std::vector<BarPlan>& plans) {
    int bars = 0;
    for (const auto& sold : bars_sold(project, plans)) bars += sold.bars();
    return bars;
}

}  // namespace model
