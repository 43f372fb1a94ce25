#include "model/buying/buy_csv.h"

#include "engine/files/csv.h"
#include "model/buying/money.h"
#include "model/schedule/weight.h"

#include <array>
#include <charconv>
#include <utility>

namespace model {
namespace {

std::string price_or_nothing(const std::optional<Cents>& price) {
    return price ? money_text(*price) : std::string{};
}

std::string percent_words(double percent) {
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), percent).ptr;
    return std::string(buffer.data(), end) + " %";
}

std::string paid_note(const Purchase& purchase) {
    const auto delivery = delivery_of(purchase);
    std::string note = delivery ? "with delivery " + money_text(*delivery) : "";
    if (!purchase.note.empty()) note += (note.empty() ? "" : "; ") + purchase.note;
    return note;
}

}  // namespace

std::string buy_csv(const Estimate& estimate, const engine::TapeStyle& shown) {
    engine::CsvText text{"kind", "what", "size", "count", "each", "sum", "currency", "note"};
    const auto& currency = estimate.currency;
    for (const auto& line : estimate.lines) {
        text.row({name_of(line.kind), line.what, line.size, std::to_string(line.count),
                  price_or_nothing(line.each), price_or_nothing(line.sum), currency,
                  line.sum ? line.note : line.note + (line.note.empty() ? "" : "; ") + "no price"});
    }
    for (const auto& purchase : estimate.paid) {
        text.row({"paid", purchase.supplier, purchase.date, "", "",
                  has_sum(purchase) ? money_text(total_of(purchase)) : std::string(),
                  purchase.currency, paid_note(purchase)});
    }
    // What has no price comes to no sum, rather than to 0.00.
    const auto sum = [&](Cents cents) { return has_total(estimate) ? money_text(cents) : ""; };
    text.row({"sum", estimate.from, "", "", "", sum(estimate.sum), currency, ""});
    text.row(
        {"tax", percent_words(estimate.tax_percent), "", "", "", sum(estimate.tax), currency, ""});
    text.row({"total", estimate.from, "", "", "", sum(estimate.total), currency,
              !has_total(estimate)       ? "no price is known yet of what follows"
              : estimate.without.empty() ? ""
                                         : "without what follows"});
    for (const auto& thing : estimate.without) text.row({"without", thing, "", "", "", "", "", ""});
    text.row({"weight", bought_word(estimate), weight_text(estimate.bought_kg, shown), "", "", "",
              "", "without fasteners"});
    text.row({"weight", "built", weight_text(estimate.built_kg, shown), "", "", "", "",
              "without fasteners"});
    return std::move(text).take();
}

}  // namespace model
