#include "model/buying/supply_from.h"

#include "model/resolve/finding.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace model {
namespace {

using engine::Length;

constexpr int no_limit = std::numeric_limits<int>::max();

std::optional<Length> longest_home(const PriceTerms& terms, WayHome way) {
    return way == WayHome::fetched ? terms.longest_brought_home : terms.longest_delivered;
}

OfferedBar whole_bar(const BarPrice& bar) {
    return {.length = bar.length.nm(),
            .left = bar.limit.value_or(no_limit),
            .price = bar.price,
            .halved_from = 0};
}

OfferedBar half_bar(const BarPrice& bar, Cents fee, Nm kerf) {
    const int bars = bar.limit.value_or(no_limit);
    OfferedBar half{.length = (bar.length.nm() - kerf) / 2,
                    .left = bars > no_limit / 2 ? no_limit : 2 * bars,
                    .price = std::nullopt,
                    .halved_from = bar.length.nm()};
    if (bar.price) {
        half.halved_price = *bar.price + fee;
        half.price = (*half.halved_price + 1) / 2;
    }
    return half;
}

// Where it can be mended: the row of the list; who sells, where it was read from no file.
std::string place_of(const BarPrice& bar, const PriceList& prices, const Supplier& supplier) {
    if (prices.file.empty() || bar.line.number == 0) return supplier.name;
    return prices.file + ", line " + std::to_string(bar.line.number);
}

engine::Error too_long_to_come(const BarPrice& bar,
                               Length longest,
                               const PriceList& prices,
                               const Supplier& supplier,
                               const engine::TapeStyle& shown) {
    const bool is_fetched = supplier.way == WayHome::fetched;
    return {.code = engine::ErrorCode::invalid_value,
            .where = place_of(bar, prices, supplier),
            .message = "a bar of " + length_in_words(bar.length, shown) + " is longer than the " +
                       length_in_words(longest, shown) + " that can be " +
                       (is_fetched ? "brought home" : "delivered") +
                       ", and is not cut in half short enough"};
}

engine::Error without_price(const BarPrice& bar,
                            const PriceList& prices,
                            const Supplier& supplier,
                            const engine::TapeStyle& shown) {
    return {.code = engine::ErrorCode::invalid_text,
            .where = place_of(bar, prices, supplier),
            .message = "a bar of " + length_in_words(bar.length, shown) +
                       " has no price in the list, where others have one, so it is not counted on"};
}

}  // namespace

BarSupply supply_from(const PriceList& prices,
                      const Supplier& supplier,
                      const Project& project,
                      const Resolved& resolved,
                      const Stock& stock) {
    Stock own = stock;
    own.bars.clear();
    auto supply = bar_supply(project, resolved, own);
    const auto longest = longest_home(prices.terms, supplier.way);
    const auto fee = halving_fee(prices.terms);
    supply.free_cuts = prices.terms.free_cuts;
    supply.cut_fee = fee.value_or(0);
    const auto is_of_stock = [&](const BarPrice& bar) {
        return bar.section == stock.section && bar.alloy == stock.alloy;
    };
    const bool has_price = std::ranges::any_of(prices.bars, [&](const BarPrice& bar) {
        return is_of_stock(bar) && bar.price.has_value();
    });
    for (const auto& bar : prices.bars) {
        if (!is_of_stock(bar)) continue;
        if (has_price && !bar.price) {
            supply.not_home.push_back(without_price(bar, prices, supplier, project.shown));
            continue;
        }
        if (!longest || bar.length <= *longest) {
            supply.offers.push_back(whole_bar(bar));
            continue;
        }
        const auto half = half_bar(bar, fee.value_or(0), resolved.shop.kerf);
        if (fee && half.length > 0 && half.length <= longest->nm()) {
            supply.offers.push_back(half);
        } else {
            supply.not_home.push_back(
                too_long_to_come(bar, *longest, prices, supplier, project.shown));
        }
    }
    std::ranges::stable_sort(supply.offers, std::ranges::greater{}, &OfferedBar::length);
    return supply;
}

std::vector<engine::Error> rows_not_used(const PriceList& prices,
                                         const Supplier& supplier,
                                         const Project& project,
                                         const Resolved& resolved) {
    auto rows = prices.warnings;
    for (const auto& stock : project.stock) {
        const auto supply = supply_from(prices, supplier, project, resolved, stock);
        for (const auto& row : supply.not_home) {
            if (std::ranges::find(rows, row) == rows.end()) rows.push_back(row);
        }
    }
    return rows;
}

}  // namespace model
