#include "model/buying/estimate_lines.h"

#include "model/buying/known_goods.h"
#include "model/catalogue/section_shape.h"
#include "model/resolve/finding.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/length_texts.h"

#include <algorithm>

namespace model {
namespace {

using engine::Length;

// Of one as it is sold.
std::optional<Cents> price_of_one(const BarsSold& sold, const Stock& stock, const PriceList* list) {
    if (!sold.is_halved) return sold.price;
    if (list == nullptr) return std::nullopt;
    for (const auto& bar : list->bars) {
        if (bar.section == stock.section && bar.alloy == stock.alloy &&
            bar.length.nm() == sold.length)
            return bar.price;
    }
    return std::nullopt;
}

double bars_kg(const BarsSold& sold, const Stock& stock, const Catalogue& catalogue) {
    const auto* section = find_section(catalogue, stock.section);
    if (section == nullptr) return 0.0;
    const auto* alloy = find_alloy(catalogue, stock.alloy);
    constexpr double mm_per_metre = 1000.0;
    return mass_per_metre(*section, alloy == nullptr ? Alloy{} : *alloy) * sold.bars() *
           Length::from_nm(sold.length).mm() / mm_per_metre;
}

void add_cutting(Estimate& estimate, int bars, const PriceList* prices) {
    if (bars == 0 || prices == nullptr) return;
    const int free = std::min(bars, prices->terms.free_cuts);
    // As the list itself calls what it asks for that.
    const std::string what =
        prices->terms.cutting_in_half ? "cutting in half" : "each cut, of bars cut in half";
    add_line(
        estimate,
        {.kind = BuyKind::cutting,
         .what = what,
         .size = "",
         .count = bars - free,
         .each = halving_fee(prices->terms),
         .sum = std::nullopt,
         .note =
             free > 0 ? std::to_string(free) + (bars > free ? " more" : "") + " for nothing" : "",
         .free = free},
        what);
    estimate.free_cuts = prices->terms.free_cuts;
}

}  // namespace

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

void add_line(Estimate& estimate, EstimateLine line, const std::string& thing) {
    if (line.each) {
        line.sum = *line.each * line.count;
    } else if (std::ranges::find(estimate.without, thing) == estimate.without.end()) {
        estimate.without.push_back(thing);
    }
    estimate.lines.push_back(std::move(line));
}

void add_bar_lines(Estimate& estimate,
                   const Project& project,
                   const Catalogue& catalogue,
                   const std::vector<BarPlan>& plans,
                   const PriceList* prices) {
    int halved = 0;
    for (const auto& sold : bars_sold(project, plans)) {
        const auto& stock = project.stock[sold.stock];
        const auto goods = bar_goods(stock.section, stock.alloy).name;
        add_line(estimate,
                 {.kind = BuyKind::bar,
                  .what = goods,
                  .size = bar_length_text(Length::from_nm(sold.length), project.shown),
                  .count = sold.bars(),
                  .each = price_of_one(sold, stock, prices),
                  .sum = std::nullopt,
                  .note = halving_note(sold)},
                 goods);
        if (sold.is_halved) halved += sold.bars();
        estimate.bought_kg += bars_kg(sold, stock, catalogue);
    }
    add_cutting(estimate, halved, prices);
    std::size_t homeless = 0;
    for (const auto& plan : plans) homeless += plan.too_long.size() + plan.left_out.size();
    if (homeless > 0)
        estimate.without.push_back(counted(homeless, "piece", "pieces") +
                                   std::string(that_no_bar_holds));
}

}  // namespace model
