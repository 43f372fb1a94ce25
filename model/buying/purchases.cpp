#include "model/buying/purchases.h"

#include "model/buying/money.h"

#include <algorithm>

namespace model {

Cents total_of(const Purchase& purchase) {
    Cents total = purchase.tax;
    for (const auto& line : purchase.lines) total += line.sum.value_or(0);
    return total;
}

bool has_sum(const Purchase& purchase) {
    return total_of(purchase) != 0 || std::ranges::any_of(purchase.lines, [](const PaidLine& line) {
               return is_goods(line.kind) && line.sum.has_value();
           });
}

std::optional<Cents> delivery_of(const Purchase& purchase) {
    const auto line = std::ranges::find(purchase.lines, BuyKind::delivery, &PaidLine::kind);
    return line == purchase.lines.end() ? std::nullopt : line->sum;
}

int bars_owned(const Stock& stock) {
    int bars = static_cast<int>(std::ranges::count(stock.at_saw, false, &BarAtSaw::was_offcut));
    for (const auto& it : stock.at_home) bars += std::max(it.count, 0);
    return bars;
}

bool is_in_force(const Purchase& purchase, const Project& project) {
    return std::ranges::all_of(purchase.bars_then, [&](const BarsThen& then) {
        const auto stock = std::ranges::find(project.stock, then.stock, &Stock::name);
        // One that was renamed or removed since tells nothing.
        return stock == project.stock.end() || bars_owned(*stock) >= then.bars;
    });
}

bool counts_as_paid(const Purchases& purchases, std::size_t which, const Project& project) {
    const auto& own = purchases.all[which];
    const auto is_instead = [&](const Purchase& later) {
        return std::ranges::any_of(later.bars_then, [&](const BarsThen& it) {
            const auto then = std::ranges::find(own.bars_then, it.stock, &BarsThen::stock);
            return then != own.bars_then.end() && it.bars <= then->bars;
        });
    };
    const auto behind = purchases.all.begin() + static_cast<std::ptrdiff_t>(which) + 1;
    return is_in_force(own, project) && std::none_of(behind, purchases.all.end(), is_instead);
}

std::vector<Purchase> paid_for(const Purchases& purchases, const Project& project) {
    std::vector<Purchase> paid;
    for (std::size_t i = 0; i < purchases.all.size(); ++i) {
        if (counts_as_paid(purchases, i, project)) paid.push_back(purchases.all[i]);
    }
    return paid;
}

std::string purchase_words(const Purchase& purchase) {
    std::string text = has_sum(purchase) ? money_text(total_of(purchase)) : "an unknown sum";
    if (has_sum(purchase) && !purchase.currency.empty()) text += " " + purchase.currency;
    if (!purchase.supplier.empty()) text += " to " + purchase.supplier;
    text += " on " + purchase.date;
    const auto delivery = delivery_of(purchase);
    if (delivery && *delivery > 0) text += ", delivery " + money_text(*delivery) + " in it";
    const bool lacks_price = std::ranges::any_of(
        purchase.lines, [](const PaidLine& line) { return !line.sum.has_value(); });
    if (lacks_price && has_sum(purchase)) text += ", without what had no price";
    return purchase.note.empty() ? text : text + "; " + purchase.note;
}

}  // namespace model
