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
    return delivery ? "with delivery " + money_text(*delivery) : std::string{};
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
        text.row({"paid", purchase.supplier, purchase.date, "", "", money_text(total_of(purchase)),
                  purchase.currency, paid_note(purchase)});
    }
    text.row({"sum", estimate.from, "", "", "", money_text(estimate.sum), currency, ""});
    text.row({"tax", percent_words(estimate.tax_percent), "", "", "", money_text(estimate.tax),
              currency, ""});
    text.row({"total", estimate.from, "", "", "", money_text(estimate.total), currency,
              estimate.without.empty() ? "" : "without what follows"});
    for (const auto& thing : estimate.without) text.row({"without", thing, "", "", "", "", "", ""});
    text.row({"weight", "bought", weight_text(estimate.bought_kg, shown), "", "", "", "",
              "without fasteners"});
    text.row({"weight", "built", weight_text(estimate.built_kg, shown), "", "", "", "",
              "without fasteners"});
    return std::move(text).take();
}

}  // namespace model
