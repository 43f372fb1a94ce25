#include "model/buying/purchase_made.h"

#include "model/buying/money.h"

#include <algorithm>
#include <utility>

namespace model {
namespace {

bool has_paid_delivery(const Estimate& estimate) {
    return std::ranges::any_of(estimate.paid, [&](const Purchase& it) {
        return it.supplier == estimate.from && delivery_of(it).has_value();
    });
}

bool is_of(BoughtPart part, const Estimate& estimate, const EstimateLine& line) {
    switch (line.kind) {
        case BuyKind::bar:
        case BuyKind::cutting:
            return true;
        case BuyKind::delivery:
            return part != BoughtPart::bars_in_hand || !has_paid_delivery(estimate);
        case BuyKind::sheet:
        case BuyKind::fastener:
            break;
    }
    if (part != BoughtPart::all) return false;
    return line.sum.has_value() || estimate.from.empty();
}

// Without a bar no delivery of bars is paid.
bool is_anything_of(BoughtPart part, const Estimate& estimate) {
    return part == BoughtPart::all ||
           std::ranges::count(estimate.lines, BuyKind::bar, &EstimateLine::kind) > 0;
}

// Stocks of which there are more bars than before.
std::vector<BarsThen> bars_then(const Project& before, const Project& after) {
    std::vector<BarsThen> all;
    for (const auto& stock : after.stock) {
        const auto old = std::ranges::find(before.stock, stock.name, &Stock::name);
        const int were = old == before.stock.end() ? 0 : bars_owned(*old);
        const int are = bars_owned(stock);
        if (are > were) all.push_back({stock.name, are});
    }
    return all;
}

// Without what was paid.
std::vector<PaidLine> bars_of(const Purchase& purchase) {
    std::vector<PaidLine> bars;
    for (auto line : purchase.lines) {
        line.sum.reset();
        if (line.kind == BuyKind::bar) bars.push_back(std::move(line));
    }
    return bars;
}

bool is_of_bars_alone(const Purchase& purchase) {
    return std::ranges::all_of(purchase.lines, [](const PaidLine& line) {
        return line.kind == BuyKind::bar || !is_goods(line.kind);
    });
}

bool is_same_order(const Purchase& one, const Purchase& other) {
    return is_of_bars_alone(one) && is_of_bars_alone(other) && one.supplier == other.supplier &&
           one.currency == other.currency && one.bars_then == other.bars_then &&
           bars_of(one) == bars_of(other);
}

}  // namespace

bool is_of_bars_in_hand(const Purchase& purchase) {
    return std::string_view(purchase.note).starts_with(note_of_bars_in_hand);
}

std::vector<BarPlan> plans_of_new_bars(std::vector<BarPlan> plans,
                                       const Project& before,
                                       const Project& after) {
    const auto bought = bars_then(before, after);
    std::erase_if(plans, [&](const BarPlan& plan) {
        const auto& stock = before.stock[plan.stock].name;
        return std::ranges::find(bought, stock, &BarsThen::stock) == bought.end();
    });
    return plans;
}

Purchase purchase_of(const Estimate& estimate,
                     BoughtPart part,
                     const Project& before,
                     const Project& after,
                     std::string date) {
    Purchase purchase{.date = std::move(date),
                      .supplier = estimate.from,
                      .currency = estimate.currency,
                      .lines = {},
                      .bars_then = bars_then(before, after),
                      .note = part == BoughtPart::bars_in_hand ? std::string(note_of_bars_in_hand)
                                                               : std::string()};
    Cents sum = 0;
    if (!is_anything_of(part, estimate)) return purchase;
    for (const auto& line : estimate.lines) {
        if (!is_of(part, estimate, line)) continue;
        purchase.lines.push_back({line.kind, line.what, line.size, line.count, line.sum});
        sum += line.sum.value_or(0);
    }
    purchase.tax = share_of(sum, estimate.tax_percent);
    return purchase;
}

Purchases with_purchase(const Purchases& purchases, Purchase purchase, const Project& before) {
    if (!is_of_bars_in_hand(purchase)) {
        Purchases all{paid_for(purchases, before)};
        all.all.push_back(std::move(purchase));
        return all;
    }
    Purchases all = purchases;
    for (std::size_t i = all.all.size(); i-- > 0;) {
        if (counts_as_paid(all, i, before) || !is_same_order(all.all[i], purchase)) continue;
        const auto at = all.all.begin() + static_cast<std::ptrdiff_t>(i);
        std::rotate(at, at + 1, all.all.end());
        return all;
    }
    all.all.push_back(std::move(purchase));
    return all;
}

}  // namespace model
