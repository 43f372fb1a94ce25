#include "model/buying/estimate_lines.h"

#include "model/buying/known_goods.h"
#include "model/catalogue/section_shape.h"
#include "model/resolve/finding.h"
#include "model/schedule/length_texts.h"

#include <algorithm>

namespace model {
namespace {

using engine::Length;

std::string in_words(Nm length, const engine::TapeStyle& shown) {
    return bar_length_text(Length::from_nm(length), shown);
}

// ---- bars ---------------------------------------------------------------------------------------

// Bars of one section, alloy, length and price.
struct BarGroup {
    const Stock* stock = nullptr;
    Nm length = 0;  // as it is sold
    bool is_halved = false;
    std::optional<Cents> price;  // of one as it is sold
    int count = 0;               // of halves where it is halved

    int bars() const { return is_halved ? (count + 1) / 2 : count; }

    bool is_like(const BarGroup& other) const {
        return stock->section == other.stock->section && stock->alloy == other.stock->alloy &&
               length == other.length && is_halved == other.is_halved && price == other.price;
    }
};

std::optional<Cents> price_of_whole(const BarGroup& group, const PriceList* prices) {
    if (prices == nullptr) return std::nullopt;
    for (const auto& bar : prices->bars) {
        if (bar.section == group.stock->section && bar.alloy == group.stock->alloy &&
            bar.length.nm() == group.length)
            return bar.price;
    }
    return std::nullopt;
}

BarGroup group_with(const PlannedBar& bar, const Stock& stock, const PriceList* prices) {
    BarGroup group{.stock = &stock,
                   .length = bar.length,
                   .is_halved = bar.halved_from > 0,
                   .price = bar.price,
                   .count = 1};
    if (!group.is_halved) return group;
    group.length = bar.halved_from;
    group.price = price_of_whole(group, prices);
    return group;
}

std::vector<BarGroup> bar_groups(const Project& project,
                                 const std::vector<BarPlan>& plans,
                                 const PriceList* prices) {
    std::vector<BarGroup> groups;
    for (const auto& plan : plans) {
        for (const auto& bar : plan.bars) {
            if (bar.from != BarFrom::shop) continue;
            const auto group = group_with(bar, project.stock[plan.stock], prices);
            const auto same =
                std::ranges::find_if(groups, [&](const BarGroup& it) { return it.is_like(group); });
            if (same == groups.end()) {
                groups.push_back(group);
            } else {
                ++same->count;
            }
        }
    }
    return groups;
}

double bars_kg(const BarGroup& group, const Catalogue& catalogue) {
    const auto* section = find_section(catalogue, group.stock->section);
    if (section == nullptr) return 0.0;
    const auto* alloy = find_alloy(catalogue, group.stock->alloy);
    constexpr double mm_per_metre = 1000.0;
    return mass_per_metre(*section, alloy == nullptr ? Alloy{} : *alloy) * group.bars() *
           Length::from_nm(group.length).mm() / mm_per_metre;
}

void add_cutting(Estimate& estimate, int bars, const PriceList* prices) {
    if (bars == 0 || prices == nullptr) return;
    const int free = std::min(bars, prices->terms.free_cuts);
    // As the list itself calls what it asks for that.
    const std::string what =
        prices->terms.cutting_in_half ? "cutting in half" : "each cut, of bars cut in half";
    add_line(estimate,
             {.kind = BuyKind::cutting,
              .what = what,
              .size = "",
              .count = bars - free,
              .each = halving_fee(prices->terms),
              .sum = std::nullopt,
              .note = free > 0 ? std::to_string(free) + " more free" : ""},
             what);
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
    for (const auto& group : bar_groups(project, plans, prices)) {
        const auto goods = bar_goods(group.stock->section, group.stock->alloy).name;
        const auto size = in_words(group.length, project.shown);
        const bool is_odd = group.is_halved && group.count % 2 != 0;
        add_line(estimate,
                 {.kind = BuyKind::bar,
                  .what = goods,
                  .size = size,
                  .count = group.bars(),
                  .each = group.price,
                  .sum = std::nullopt,
                  .note = !group.is_halved ? ""
                          : is_odd         ? "cut in half, one half is left over"
                                           : "cut in half"},
                 goods);
        if (group.is_halved) halved += group.bars();
        estimate.bought_kg += bars_kg(group, catalogue);
    }
    add_cutting(estimate, halved, prices);
    std::size_t homeless = 0;
    for (const auto& plan : plans) homeless += plan.too_long.size() + plan.left_out.size();
    if (homeless > 0)
        estimate.without.push_back(counted(homeless, "piece", "pieces") +
                                   std::string(that_no_bar_holds));
}

}  // namespace model
