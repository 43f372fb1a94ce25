#include "model/resolve/bar_supply.h"

#include "engine/measure/formula.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string_view>

namespace model {
namespace {

// Nobody has more offcuts of one length on the rack; a larger count is a slip of the pen and would
// only fill the memory.
constexpr int most_offcuts = 10'000;

}  // namespace

engine::Result<Nm> stated_length(const Project& project,
                                 const Resolved& resolved,
                                 const Formula& formula) {
    const auto lookup = [&](std::string_view name) -> std::optional<engine::Quantity> {
        const auto& all = project.dimensions;
        const auto found = std::ranges::find(all, name, &Dimension::name);
        const auto index = static_cast<std::size_t>(found - all.begin());
        if (index >= resolved.dimensions.size() || !resolved.dimensions[index]) return std::nullopt;
        return *resolved.dimensions[index];
    };
    const auto value = engine::evaluate(formula, engine::QuantityKind::length,
                                        engine::bare_unit(project.shown), lookup);
    if (!value) return value.error();
    if (value->length.nm() > 0) return value->length.nm();
    return engine::Error{.code = engine::ErrorCode::invalid_value,
                         .message = "the length \"" + formula + "\" is not more than zero"};
}

Cents cents_of(double money) { return std::llround(money * 100.0); }

BarSupply bar_supply(const Project& project, const Resolved& resolved, const Stock& stock) {
    BarSupply supply;
    for (const auto& bar : stock.bars) {
        const auto length = stated_length(project, resolved, bar.length);
        if (!length) {
            supply.refused.push_back(length.error());
        } else {
            const int left = bar.limit.value_or(std::numeric_limits<int>::max());
            OfferedBar offer{.length = *length, .left = std::max(left, 0)};
            if (bar.price) offer.price = cents_of(*bar.price);
            supply.offers.push_back(offer);
        }
    }
    const auto add = [&](const std::vector<Offcut>& lying, std::vector<Nm>& lengths) {
        for (const auto& it : lying) {
            const auto length = stated_length(project, resolved, it.length);
            if (!length) {
                supply.refused.push_back(length.error());
                continue;
            }
            const auto count = static_cast<std::size_t>(std::clamp(it.count, 0, most_offcuts));
            lengths.insert(lengths.end(), count, *length);
        }
    };
    add(stock.offcuts, supply.offcuts);
    add(stock.at_home, supply.at_home);
    std::ranges::stable_sort(supply.offers, std::ranges::greater{}, &OfferedBar::length);
    std::ranges::sort(supply.offcuts);
    std::ranges::sort(supply.at_home, std::ranges::greater{});
    return supply;
}

}  // namespace model
