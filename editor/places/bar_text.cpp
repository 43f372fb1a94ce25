#include "editor/places/bar_text.h"

#include "model/buying/comparison.h"
#include "model/schedule/bar_words.h"
#include "model/schedule/bars_sold.h"
#include "model/schedule/shared_halves.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <functional>
#include <map>

namespace editor {
namespace {

std::string feet_text(engine::Length length) {
    constexpr auto inch = engine::Length::nm_per_inch;
    const auto inches = (length.nm() + inch / 2) / inch;
    const auto feet = inches / 12;
    const auto rest = inches % 12;
    if (feet == 0) return std::to_string(rest) + " in";
    const std::string text = std::to_string(feet) + " ft";
    return rest == 0 ? text : text + " " + std::to_string(rest) + " in";
}

// Bars of one stock or of all, as they are told together.
struct ToldBars {
    int bars = 0;
    int halves = 0;
};

// Whether one of those bars, of one stock alone, is cut for another stock too.
bool is_shared(const std::vector<model::OddHalf>& odd, const model::BarsSold& sold) {
    return std::ranges::any_of(odd, [&](const model::OddHalf& it) {
        return it.other != model::no_index && it.half.stock == sold.stock && sold.is_halved &&
               it.half.whole == sold.length && it.half.price == sold.price;
    });
}

enum class Told { shared, halved, whole };  // the last of one length is told first

std::string number_words(const Derived& derived, engine::Nm length, Told as, const ToldBars& told) {
    const auto bar = bar_text(engine::Length::from_nm(length), derived.project->shown);
    if (as == Told::shared) return model::halves_counted(told.halves, bar);
    if (as == Told::halved) return model::bars_in_halves(told.bars, bar);
    return std::to_string(told.bars) + " x " + bar;
}

// "3 x 16 ft + 2 x 20 ft in halves", of one stock or of all.
std::string sold_text(const Derived& derived, const std::optional<model::Index>& of_stock) {
    auto plans = derived.plans;
    std::vector<model::OddHalf> odd;
    if (of_stock) odd = model::odd_halves(*derived.project, model::halves_to_buy(plans));
    std::erase_if(plans, [&](const auto& plan) { return of_stock && plan.stock != *of_stock; });
    // Longest first; of one length those that stay whole.
    std::map<std::pair<engine::Nm, Told>, ToldBars, std::greater<>> bars;
    for (const auto& sold : model::bars_sold(*derived.project, plans)) {
        const auto as = is_shared(odd, sold) ? Told::shared
                        : sold.is_halved     ? Told::halved
                                             : Told::whole;
        auto& told = bars[{sold.length, as}];
        told.bars += sold.bars();
        told.halves += sold.count;
    }
    std::string text;
    for (const auto& [of, told] : bars)
        text += (text.empty() ? "" : " + ") + number_words(derived, of.first, of.second, told);
    return text;
}

std::string with_at_hand(std::string text, const Derived& derived, model::Index stock) {
    std::map<model::BarFrom, int> at_hand;
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (row.stock == stock) ++at_hand[row.from];
    }
    const auto add = [&](model::BarFrom from, const char* one, const char* many) {
        const int number = at_hand[from];
        if (number == 0) return;
        text += (text.empty() ? "" : " + ") +
                (number == 1 ? std::string(one) : std::to_string(number) + " " + many);
    };
    add(model::BarFrom::offcut, "an offcut", "offcuts");
    add(model::BarFrom::home, "a bar at home", "bars at home");
    add(model::BarFrom::saw, "a bar at the saw", "bars at the saw");
    return text;
}

}  // namespace

std::string bar_text(engine::Length length, const engine::TapeStyle& shown) {
    const auto unit = engine::bare_unit(shown);
    if (unit == engine::LengthUnit::inch || unit == engine::LengthUnit::foot) {
        return feet_text(length);
    }
    return engine::tape_text(length,
                             {.form = engine::TapeForm::metre, .decimals = 2, .with_unit = true});
}

std::vector<BarRun> bar_runs(const Derived& derived) {
    std::vector<BarRun> runs;
    for (std::size_t i = 0; i < derived.bars.size(); ++i) {
        if (runs.empty() || derived.bars[i].bar != derived.bars[i - 1].bar) runs.push_back({i, 0});
        ++runs.back().count;
    }
    return runs;
}

std::optional<double> price_of_bars(const Derived& derived) {
    bool buys_any = false;
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (row.from != model::BarFrom::shop) continue;
        if (!row.price) return std::nullopt;
        buys_any = true;
    }
    if (!buys_any) return std::nullopt;
    // Not bar by bar: half a bar may cost half a hundredth more or less.
    model::Cents sum = 0;
    for (const auto& plan : derived.plans) sum += plan.cost;
    return static_cast<double>(sum) / 100.0;
}

std::string section_without_price(const Derived& derived) {
    bool has_any = false;
    std::string without;
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (row.from != model::BarFrom::shop) continue;
        has_any = has_any || row.price.has_value();
        if (!row.price && without.empty()) without = row.section;
    }
    return has_any ? without : "";
}

std::string price_text(double price, const std::string& currency) {
    std::array<char, 64> digits{};
    std::snprintf(digits.data(), digits.size(), "%.2f", price);
    const std::string amount = digits.data();
    if (currency.empty()) return amount;
    const bool is_sign = currency == "$" || currency == "\xC2\xA3";  // these stand in front
    return is_sign ? currency + amount : amount + " " + currency;
}

const std::string& bars_currency(const Derived& derived) {
    const auto from = derived.prices == nullptr
                          ? model::BuyFrom{}
                          : model::chosen_supplier(*derived.project, *derived.prices);
    return model::currency_of(*derived.project, from);
}

std::string plan_words(const model::BarPlan& plan, bool is_nested, const std::string& currency) {
    int bars = 0;
    int priced = 0;
    for (const auto& bar : plan.bars) {
        if (bar.from != model::BarFrom::shop) continue;
        ++bars;
        if (bar.price) ++priced;
    }
    if (bars == 0) return {};
    const auto money = [&](model::Cents cents) {
        return price_text(static_cast<double>(cents) / 100.0, currency);
    };
    if (priced == 0) {
        if (!is_nested) return "looking for the least length of bar";
        return plan.is_cheapest ? "no price stated; proven least length of bar"
                                : "no price stated; little length of bar, not proven least";
    }
    std::string text = priced == bars ? money(plan.cost)
                                      : money(plan.cost) +
                                            " if bars without a "
                                            "price cost like the others";
    if (!is_nested) return text + "; looking for the cheapest";
    if (plan.is_cheapest) return text + ", proven cheapest";
    if (plan.least_cost <= 0) return text;
    return text + "; no plan costs less than " + money(plan.least_cost);
}

std::string bars_text(const Derived& derived, std::optional<model::Index> of_stock) {
    const auto text = sold_text(derived, of_stock);
    // Only a stock that is looked at alone tells of what is at hand: that is not bought.
    const auto all = of_stock ? with_at_hand(text, derived, *of_stock) : text;
    return all.empty() ? "no bar" : all;
}

}  // namespace editor
