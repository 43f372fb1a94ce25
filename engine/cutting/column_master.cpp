#include "engine/cutting/column_master.h"

#include "engine/cutting/knapsack.h"

#include <algorithm>
#include <cmath>

namespace engine::cutting {

namespace {

constexpr double highest_lack_cost = 1e5;

std::vector<double> prices_to_one(std::vector<double> prices) {
    const double dearest = *std::max_element(prices.begin(), prices.end());
    for (double& price : prices) price /= std::max(dearest, 1e-9);
    return prices;
}

std::vector<double> demands(const Task& task) {
    std::vector<double> demands;
    for (const Item& item : task.items) demands.push_back(item.demand);
    return demands;
}

std::vector<double> supplies(const Task& task) {
    std::vector<double> supplies;
    for (const Bar& bar : task.bars) supplies.push_back(bar.supply);
    return supplies;
}

}  // namespace

ColumnMaster::ColumnMaster(const Task& task, std::vector<double> prices)
    : task_{task},
      prices_{prices_to_one(std::move(prices))},
      lack_cost_{2.0},
      simplex_{demands(task), supplies(task), lack_cost_} {}

bool ColumnMaster::add(const Pattern& pattern) {
    if (pattern.parts.empty() || !known_.insert(pattern).second) return false;
    std::vector<Simplex::Entry> entries;
    for (const Part& part : pattern.parts) entries.emplace_back(part.item, part.count);
    entries.emplace_back(static_cast<int>(task_.items.size()) + pattern.bar, 1.0);
    simplex_.add_column(prices_[static_cast<std::size_t>(pattern.bar)], std::move(entries));
    patterns_.push_back(pattern);
    return true;
}

bool ColumnMaster::raise_lack_cost() {
    if (!is_lacking() || lack_cost_ >= highest_lack_cost) return false;
    lack_cost_ *= 10.0;
    simplex_.set_lack_cost(lack_cost_);
    return true;
}

std::vector<std::int32_t> ColumnMaster::values() {
    double most = 1e-9;
    for (const Bar& bar : task_.bars) {
        for (std::size_t i = 0; i < task_.items.size(); ++i) {
            const Item& item = task_.items[i];
            const double each = simplex_.dual(i) / static_cast<double>(item.weight);
            most = std::max(most, each * static_cast<double>(bar.capacity));
        }
    }
    scale_ = most_value / most;
    std::vector<std::int32_t> values;
    for (std::size_t i = 0; i < task_.items.size(); ++i)
        values.push_back(static_cast<std::int32_t>(std::max(0.0, simplex_.dual(i) * scale_)));
    return values;
}

std::int32_t ColumnMaster::worth_adding(int bar) const {
    const auto at = static_cast<std::size_t>(bar);
    const double least = (prices_[at] - bar_dual(at)) * scale_ + most_value * 1e-7;
    return static_cast<std::int32_t>(std::clamp(least, 0.0, 1.0 * most_value));
}

Relaxed ColumnMaster::relaxed() const {
    Relaxed relaxed;
    relaxed.objective = simplex_.objective();
    const std::vector<double> amounts = simplex_.amounts();
    for (std::size_t c = 0; c < patterns_.size(); ++c) {
        if (amounts[c] < 1e-4 && simplex_.reduced_cost(c) > 0.05) continue;
        relaxed.patterns.push_back(patterns_[c]);
        relaxed.amounts.push_back(amounts[c]);
    }
    return relaxed;
}

}  // namespace engine::cutting
