#include "model/buying/estimate.h"

#include "model/assembly/assembly_order.h"
#include "model/buying/estimate_lines.h"
#include "model/buying/money.h"
#include "model/project/listed_words.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <numeric>

namespace model {
namespace {

void add_delivery(Estimate& estimate, const Project& project, const BuyFrom& from) {
    // What has no price here is not sold here, but for bars: those are planned by this list.
    const bool is_ordered = std::ranges::any_of(estimate.lines, [](const EstimateLine& line) {
        return line.kind == BuyKind::bar || line.sum.has_value();
    });
    if (!is_ordered) return;
    EstimateLine line{.kind = BuyKind::delivery, .what = "delivery", .count = 1};
    if (from.supplier == nullptr) {
        line.each = cents_of(project.shop.delivery_fee);
        if (*line.each == 0) return;
    } else {
        if (from.supplier->way == WayHome::fetched) return;
        line.each = from.prices->terms.delivery;
        if (!line.each) estimate.without.emplace_back("delivery");
    }
    line.sum = line.each;
    estimate.lines.push_back(std::move(line));
}

void add_up(Estimate& estimate) {
    for (const auto& line : estimate.lines) estimate.sum += line.sum.value_or(0);
    estimate.tax = share_of(estimate.sum, estimate.tax_percent);
    estimate.total = estimate.sum + estimate.tax;
}

bool is_any_there(const Project& project) {
    return std::ranges::any_of(project.stock,
                               [](const Stock& stock) { return bars_owned(stock) > 0; });
}

// Of more things than a line holds it is told how many.
constexpr std::size_t most_named = 3;

std::string lacking_words(const std::vector<std::string>& things, const std::string& all) {
    return things.size() > most_named ? all + std::to_string(things.size()) + " things"
                                      : listed_words(things);
}

}  // namespace

const std::string& currency_of(const Project& project, const BuyFrom& from) {
    const bool has_own = from.prices != nullptr && !from.prices->terms.currency.empty();
    return has_own ? from.prices->terms.currency : project.shop.currency;
}

Estimate estimate_of(const Project& project,
                     const Catalogue& catalogue,
                     const Resolved& resolved,
                     const std::vector<BarPlan>& plans,
                     const BuyFrom& from,
                     const std::vector<FastenerRow>* fasteners) {
    Estimate estimate;
    estimate.currency = currency_of(project, from);
    estimate.tax_percent = project.shop.tax_percent;
    if (from.supplier != nullptr) {
        const auto& terms = from.prices->terms;
        estimate.from = from.supplier->name;
        estimate.tax_percent = terms.tax_percent.value_or(estimate.tax_percent);
    }
    if (from.bought != nullptr) estimate.paid = paid_for(*from.bought, project);
    estimate.is_rest = is_any_there(project) || !estimate.paid.empty();
    add_bar_lines(estimate, project, catalogue, plans, from.prices);
    add_sheet_lines(
        estimate, project, catalogue,
        sheet_plans(project, catalogue, resolved, from.prices, paid_sheets(estimate.paid)));
    add_box_lines(
        estimate,
        fasteners == nullptr ? needed_fasteners(project, catalogue, resolved) : *fasteners,
        from.prices);
    add_delivery(estimate, project, from);
    add_up(estimate);
    const auto weights = piece_weights_kg(project, catalogue, resolved);
    estimate.built_kg = std::accumulate(weights.begin(), weights.end(), 0.0);
    return estimate;
}

std::vector<FastenerRow> needed_fasteners(const Project& project,
                                          const Catalogue& catalogue,
                                          const Resolved& resolved) {
    const auto order = assembly_order(project, catalogue, resolved);
    return fastener_rows(project, catalogue, resolved, &order);
}

bool has_total(const Estimate& estimate) {
    return estimate.lines.empty() || estimate.total != 0 ||
           std::ranges::any_of(estimate.lines, [](const EstimateLine& line) {
               return is_goods(line.kind) && line.sum.has_value();
           });
}

std::string_view bought_word(const Estimate& estimate) {
    return estimate.is_rest ? "still to buy" : "bought";
}

std::string total_in_words(const Estimate& estimate) {
    const auto& without = estimate.without;
    if (!has_total(estimate)) return "no price is known yet of " + lacking_words(without, "all ");
    std::string text = money_text(estimate.total);
    if (!estimate.currency.empty()) text += " " + estimate.currency;
    if (without.empty()) return text;
    if (without.size() > most_named)
        return text + " without " + lacking_words(without, "") + " that have no price";
    return text + " without " + lacking_words(without, "");
}

}  // namespace model
