#include "editor/places/bar_text.h"

#include "editor/dimension_values.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <functional>
#include <map>
#include <utility>

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

// By stock and length. Of two offers of one length the dearer counts: the other may run out.
using Prices = std::map<std::pair<model::Index, engine::Length>, std::optional<double>>;

Prices prices_of(const Derived& derived) {
    Prices prices;
    const auto& stocks = derived.project->stock;
    for (model::Index i = 0; i < stocks.size(); ++i) {
        for (const auto& offer : stocks[i].bars) {
            const auto length = tried_length(derived, offer.length);
            if (!length) continue;
            const auto [at, is_new] = prices.try_emplace({i, length->length}, offer.price);
            if (is_new || !at->second) continue;
            at->second =
                offer.price ? std::optional(std::max(*at->second, *offer.price)) : std::nullopt;
        }
    }
    return prices;
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
    const Prices prices = prices_of(derived);
    std::optional<double> sum;
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (row.is_offcut) continue;
        const auto at = prices.find({derived.resolved.pieces[row.piece].stock, row.bar_length});
        if (at == prices.end() || !at->second) return std::nullopt;
        sum = sum.value_or(0.0) + *at->second;
    }
    return sum;
}

std::string section_without_price(const Derived& derived) {
    const Prices prices = prices_of(derived);
    bool has_any = false;
    std::string without;
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (row.is_offcut) continue;
        const auto at = prices.find({derived.resolved.pieces[row.piece].stock, row.bar_length});
        const bool has_price = at != prices.end() && at->second.has_value();
        has_any = has_any || has_price;
        if (!has_price && without.empty()) without = row.section;
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

std::string bars_text(const Derived& derived, const std::string& section) {
    std::map<engine::Length, int, std::greater<>> count;
    int offcuts = 0;
    for (const auto& run : bar_runs(derived)) {
        const auto& row = derived.bars[run.first];
        if (!section.empty() && row.section != section) continue;
        if (row.is_offcut) {
            ++offcuts;
        } else {
            ++count[row.bar_length];
        }
    }
    std::string text;
    for (const auto& [length, number] : count) {
        if (!text.empty()) text += " + ";
        text += std::to_string(number) + " x " + bar_text(length, derived.project->shown);
    }
    if (offcuts == 0) return text.empty() ? "no bar" : text;
    const std::string rest = offcuts == 1 ? "an offcut" : std::to_string(offcuts) + " offcuts";
    // Only a section that is looked at alone tells of its offcuts: they are not bought.
    if (text.empty()) return section.empty() ? "no bar" : rest;
    return section.empty() ? text : text + " + " + rest;
}

}  // namespace editor
