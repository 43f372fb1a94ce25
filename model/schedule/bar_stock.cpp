#include "model/schedule/bar_stock.h"

#include "model/schedule/shared_halves.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

// What a bar without a price counts: as much for its length as those do that have one. Where none
// has one, length stands for money, in tenths of a millimetre. All of it twice, so that half a bar
// counts in whole hundredths of the currency.
void count_prices(std::vector<PlanStock>& stock) {
    double money = 0.0;
    double length = 0.0;
    for (const auto& it : stock) {
        if (it.from != BarFrom::shop || it.price.value_or(0) <= 0) continue;
        money += static_cast<double>(*it.price);
        length += static_cast<double>(it.length);
    }
    const double rate = length > 0.0 ? money / length : 10.0 / engine::Length::nm_per_mm;
    for (auto& it : stock) {
        if (it.from != BarFrom::shop) continue;
        const bool has_price = it.price.value_or(0) > 0;
        it.counted =
            has_price ? it.halved_price.value_or(2 * *it.price)
                      : 2 * std::max<Cents>(1, std::llround(static_cast<double>(it.length) * rate));
    }
}

}  // namespace

std::vector<PlanStock> plan_stock(const Resolved& resolved,
                                  const BarSupply& supply,
                                  const SawSeen& saw) {
    const Nm trim = resolved.shop.end_trim;
    std::vector<PlanStock> stock;
    const auto add = [&](Nm length, int left, BarFrom from) -> PlanStock& {
        return stock.emplace_back(PlanStock{
            .length = length, .left = left, .from = from, .first_start = trim, .end_trim = trim});
    };
    for (Index i = 0; i < saw.bars.size(); ++i) {
        auto& bar = add(saw.bars[i].length, 1, BarFrom::saw);
        bar.at_saw = i;
        bar.first_start = std::min(saw.bars[i].next_start, bar.length);
    }
    const auto add_alike = [&](const std::vector<Nm>& lengths, BarFrom from) {
        for (std::size_t i = 0; i < lengths.size(); ++i) {
            const bool is_alike = i > 0 && lengths[i] == lengths[i - 1];
            is_alike ? ++stock.back().left : add(lengths[i], 1, from).left;
        }
    };
    add_alike(supply.offcuts, BarFrom::offcut);
    add_alike(supply.at_home, BarFrom::home);
    for (const auto& offer : supply.offers) {
        auto& bar = add(offer.length, offer.left, BarFrom::shop);
        bar.price = offer.price;
        bar.halved_from = offer.halved_from;
        bar.halved_price = offer.halved_price;
    }
    count_prices(stock);
    return stock;
}

Cents cost_of_odd_halves(const std::vector<PlanStock>& stock, const std::vector<PlannedBar>& bars) {
    Cents cost = 0;
    for (const auto& it : stock) {
        if (it.halved_from == 0) continue;
        const OfferedBar half{.length = it.length, .halved_from = it.halved_from};
        if (bars_taken(bars, half) % 2 != 0) cost += it.counted;
    }
    return cost;
}

PlannedBar planned_bar(const PlanStock& stock) {
    return {.length = stock.length,
            .from = stock.from,
            .price = stock.price,
            .halved_from = stock.halved_from,
            .at_saw = stock.at_saw,
            .next_start = stock.first_start};
}

}  // namespace model
