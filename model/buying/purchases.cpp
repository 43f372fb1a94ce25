#include "model/buying/purchases.h"

#include "model/buying/money.h"
#include "model/project/listed_words.h"

#include <algorithm>
#include <iterator>
#include <map>

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

bool counts_as_paid(const Purchase& purchase, const Project& project) {
    return purchase.number == 0 ||
           std::ranges::find(project.purchases, purchase.number) != project.purchases.end();
}

std::vector<Purchase> paid_for(const Purchases& purchases, const Project& project) {
    std::vector<Purchase> paid;
    std::ranges::copy_if(purchases.all, std::back_inserter(paid),
                         [&](const Purchase& it) { return counts_as_paid(it, project); });
    return paid;
}

std::string words_without_rows(const Purchases& purchases, const Project& project) {
    const auto lacks_row = [&](int number) {
        return std::ranges::find(purchases.all, number, &Purchase::number) == purchases.all.end();
    };
    const auto count = std::ranges::count_if(project.purchases, lacks_row);
    if (count == 0) return {};
    if (count == 1)
        return "a purchase that the project knows is not in its table: what it cost is not known "
               "here";
    return std::to_string(count) +
           " purchases that the project knows are not in its table: what they cost is not known "
           "here";
}

std::string sum_in_words(const std::vector<Purchase>& purchases) {
    std::map<std::string, Cents> sums;
    bool lacks_any = purchases.empty();
    for (const auto& it : purchases) {
        if (has_sum(it)) {
            sums[it.currency] += total_of(it);
        } else {
            lacks_any = true;
        }
    }
    std::vector<std::string> words;
    for (const auto& [currency, sum] : sums)
        words.push_back(money_text(sum) + (currency.empty() ? "" : " " + currency));
    if (lacks_any) words.emplace_back("an unknown sum");
    return listed_words(words);
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
