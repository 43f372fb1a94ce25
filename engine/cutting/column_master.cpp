#include "engine/cutting/column_master.h"

#include "engine/cutting/knapsack.h"
#include "engine/cutting/triple_cut.h"

#include <algorithm>
#include <utility>

namespace engine::cutting {

namespace {

// How much dearer than its share of a bar by weight what lacks is at first, and how often it is
// raised to that at last, in small steps first. Measured: 1.02 takes half the steps of 2 on Hard28
// and Falkenauer's sets.
constexpr double first_lack = 1.02;
constexpr double most_lack = 1e6;
constexpr double first_raises = 4.0;

double dearest(const std::vector<double>& prices) {
    return std::max(1e-9, *std::max_element(prices.begin(), prices.end()));
}

std::vector<double> divided(std::vector<double> prices, double by) {
    for (double& price : prices) price /= by;
    return prices;
}

std::vector<double> demands(const Task& task) {
    std::vector<double> demands;
    for (const Item& item : task.items) demands.push_back(item.demand);
    return demands;
}

// What an item's share of a bar costs, a little more: the duals begin near where they end, since no
// dual exceeds what lacking costs.
std::vector<double> lack_costs(const Task& task, const std::vector<double>& prices) {
    double by_weight = 0;
    for (std::size_t b = 0; b < task.bars.size(); ++b) {
        if (task.bars[b].capacity > 0)
            by_weight = std::max(by_weight, prices[b] / static_cast<double>(task.bars[b].capacity));
    }
    std::vector<double> costs;
    for (const Item& item : task.items)
        costs.push_back(std::max(1e-6, first_lack * by_weight * static_cast<double>(item.weight)));
    return costs;
}

// Of bars, then of cuts.
std::vector<double> limits(const Task& task, const std::vector<Triple>& cuts) {
    std::vector<double> limits;
    for (const Bar& bar : task.bars) limits.push_back(bar.supply);
    for (const Triple& cut : cuts) limits.push_back(most_halves(task, cut));
    return limits;
}

}  // namespace

ColumnMaster::ColumnMaster(const Task& task, std::vector<double> prices, std::vector<Triple> cuts)
    : task_{task},
      dearest_{dearest(prices)},
      prices_{divided(std::move(prices), dearest_)},
      cuts_{std::move(cuts)},
      simplex_{demands(task), limits(task, cuts_), lack_costs(task, prices_)} {}

bool ColumnMaster::add(const Pattern& pattern) {
    if (pattern.parts.empty() || !known_.insert(pattern).second) return false;
    std::vector<Simplex::Entry> entries;
    for (const Part& part : pattern.parts) entries.emplace_back(part.item, part.count);
    entries.emplace_back(static_cast<int>(task_.items.size()) + pattern.bar, 1.0);
    for (std::size_t c = 0; c < cuts_.size(); ++c) {
        const int row = static_cast<int>(task_.items.size() + task_.bars.size() + c);
        if (const int count = halves(cuts_[c], pattern)) entries.emplace_back(row, count);
    }
    simplex_.add_column(prices_[static_cast<std::size_t>(pattern.bar)], std::move(entries));
    patterns_.push_back(pattern);
    return true;
}

bool ColumnMaster::raise_lack_cost() {
    if (!is_lacking() || lack_ >= most_lack) return false;
    const double times = lack_ < first_raises ? 2.0 : 10.0;
    lack_ *= times;
    simplex_.raise_lack_costs(times);
    return true;
}

std::vector<std::int32_t> ColumnMaster::values(const Knapsack& knapsack) {
    std::vector<double> duals;
    for (std::size_t i = 0; i < task_.items.size(); ++i)
        duals.push_back(std::max(0.0, simplex_.dual(i)));
    scale_ = most_value / std::max(1e-9, knapsack.most_in_table(duals));
    std::vector<std::int32_t> values;
    for (const double dual : duals) values.push_back(static_cast<std::int32_t>(dual * scale_));
    return values;
}

std::vector<std::int32_t> ColumnMaster::penalties() const {
    std::vector<std::int32_t> penalties;
    for (std::size_t c = 0; c < cuts_.size(); ++c) {
        const double dual = simplex_.dual(task_.items.size() + task_.bars.size() + c);
        penalties.push_back(static_cast<std::int32_t>(
            std::clamp(-dual * scale_, 0.0, static_cast<double>(most_value))));
    }
    return penalties;
}

std::int32_t ColumnMaster::worth_adding(int bar) const {
    const auto at = static_cast<std::size_t>(bar);
    const double least = (prices_[at] - bar_dual(at)) * scale_ + most_value * 1e-7;
    return least > 0.0 ? static_cast<std::int32_t>(std::min(least, 1.0 * most_value)) : 0;
}

// Of the columns that are not used only the nearest to it, so that the next relaxation starts lean.
Relaxed ColumnMaster::relaxed() const {
    const std::vector<double> amounts = simplex_.amounts();
    std::vector<std::pair<double, std::size_t>> order;
    for (std::size_t c = 0; c < patterns_.size(); ++c)
        order.emplace_back(amounts[c] > 1e-4 ? -1.0 : simplex_.reduced_cost(c), c);
    std::sort(order.begin(), order.end());
    Relaxed relaxed;
    relaxed.objective = simplex_.objective() * dearest_;
    const std::size_t most = 2 * task_.items.size() + 50;
    for (const auto& [cost, c] : order) {
        if (cost > -1.0 && (cost > 0.05 || relaxed.patterns.size() >= most)) break;
        relaxed.patterns.push_back(patterns_[c]);
        relaxed.amounts.push_back(amounts[c]);
    }
    return relaxed;
}

}  // namespace engine::cutting
