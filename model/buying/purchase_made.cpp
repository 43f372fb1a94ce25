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

constexpr std::string_view free_cuts_name = "cuts that were free";

// Bars in hand came with the order before: what was free in that is not free again.
int free_cuts_left(const Estimate& estimate) {
    int left = estimate.free_cuts;
    for (const auto& purchase : estimate.paid) {
        if (purchase.supplier != estimate.from) continue;
        if (!is_of_bars_in_hand(purchase)) left = estimate.free_cuts;
        for (const auto& line : purchase.lines) {
            if (line.kind == BuyKind::cutting && line.what == free_cuts_name) left -= line.count;
        }
    }
    return std::max(left, 0);
}

void add_cuts(Purchase& purchase, const EstimateLine& line, int free) {
    const int paid = line.count + line.free - free;
    if (paid > 0) {
        const auto sum = line.each ? std::optional{*line.each * paid} : std::nullopt;
        purchase.lines.push_back({line.kind, line.what, line.size, paid, sum});
    }
    if (free > 0)
        purchase.lines.push_back({line.kind, std::string(free_cuts_name), "", free, Cents{0}});
}

// Without a bar no delivery of bars is paid.
bool is_anything_of(BoughtPart part, const Estimate& estimate) {
    return part == BoughtPart::all ||
           std::ranges::count(estimate.lines, BuyKind::bar, &EstimateLine::kind) > 0;
}

// Whether there are more bars of it than before.
bool has_more_bars(const Project& before, const Project& after, const std::string& name) {
    const auto bars_in = [&](const Project& project) {
        const auto stock = std::ranges::find(project.stock, name, &Stock::name);
        return stock == project.stock.end() ? 0 : bars_owned(*stock);
    };
    return bars_in(after) > bars_in(before);
}

// The same in all but its number.
bool is_same_purchase(Purchase one, const Purchase& other) {
    one.number = other.number;
    return one == other;
}

bool has_bars_of(int number, const Project& project) {
    return std::ranges::any_of(project.stock, [&](const Stock& stock) {
        return std::ranges::find(stock.at_saw, number, &BarAtSaw::purchase) != stock.at_saw.end();
    });
}

// Which of a stock's bars come from the shop, of those that come to the saw, in their order there.
std::vector<bool> are_from_shop(const std::vector<BarPlan>& plans, Index stock) {
    std::vector<bool> from_shop;
    for (const auto& plan : plans) {
        if (plan.stock != stock) continue;
        for (const auto& bar : plan.bars) {
            if (bar.from != BarFrom::saw && !bar.cuts.empty())
                from_shop.push_back(bar.from == BarFrom::shop);
        }
    }
    return from_shop;
}

}  // namespace

bool is_of_bars_in_hand(const Purchase& purchase) {
    return std::string_view(purchase.note).starts_with(note_of_bars_in_hand);
}

std::vector<BarPlan> plans_of_new_bars(std::vector<BarPlan> plans,
                                       const Project& before,
                                       const Project& after) {
    std::erase_if(plans, [&](const BarPlan& plan) {
        return !has_more_bars(before, after, before.stock[plan.stock].name);
    });
    return plans;
}

Purchase purchase_of(const Estimate& estimate, BoughtPart part, std::string date) {
    Purchase purchase{.date = std::move(date),
                      .supplier = estimate.from,
                      .currency = estimate.currency,
                      .lines = {},
                      .note = part == BoughtPart::bars_in_hand ? std::string(note_of_bars_in_hand)
                                                               : std::string()};
    if (!is_anything_of(part, estimate)) return purchase;
    for (const auto& line : estimate.lines) {
        if (!is_of(part, estimate, line)) continue;
        if (line.kind == BuyKind::cutting) {
            add_cuts(purchase, line,
                     part == BoughtPart::bars_in_hand
                         ? std::min(line.count + line.free, free_cuts_left(estimate))
                         : line.free);
        } else {
            purchase.lines.push_back({line.kind, line.what, line.size, line.count, line.sum});
        }
    }
    purchase.tax = share_of(total_of(purchase), estimate.tax_percent);
    return purchase;
}

int last_number(const Purchases& purchases, const Project& project) {
    int last = 0;
    for (const auto& it : purchases.all) last = std::max(last, it.number);
    for (const int it : project.purchases) last = std::max(last, it);
    for (const auto& stock : project.stock) {
        for (const auto& bar : stock.at_saw) last = std::max(last, bar.purchase);
    }
    return last;
}

int number_for(const Purchases& purchases,
               const Purchase& purchase,
               const Project& before,
               int last) {
    const auto same = std::ranges::find_if(purchases.all, [&](const Purchase& it) {
        return !counts_as_paid(it, before) && is_same_purchase(purchase, it) &&
               !has_bars_of(it.number, before);
    });
    if (same != purchases.all.end()) return same->number;
    return std::max(last, last_number(purchases, before)) + 1;
}

std::vector<Edit> noted(std::vector<Edit> edits,
                        const Project& before,
                        const std::vector<BarPlan>& plans,
                        int number) {
    for (auto& edit : edits) {
        const auto* kept = edit.get_if<KeepBars>();
        if (kept == nullptr) continue;
        const auto stock = std::ranges::find(before.stock, kept->stock, &Stock::name);
        if (stock == before.stock.end()) continue;
        const auto from_shop =
            are_from_shop(plans, static_cast<Index>(stock - before.stock.begin()));
        KeepBars marked = *kept;
        for (std::size_t i = 0; i < from_shop.size(); ++i) {
            const auto bar = stock->at_saw.size() + i;
            if (from_shop[i] && bar < marked.at_saw.size()) marked.at_saw[bar].purchase = number;
        }
        edit = Edit{std::move(marked)};
    }
    edits.emplace_back(NotePurchase{number});
    return edits;
}

Purchases with_purchase(Purchases purchases, Purchase purchase) {
    const auto is_it = [&](const Purchase& it) { return it.number == purchase.number; };
    if (std::ranges::none_of(purchases.all, is_it)) purchases.all.push_back(std::move(purchase));
    return purchases;
}

}  // namespace model
