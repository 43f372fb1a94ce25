// The linear programme of a nest: its rows are the items and the bars, its columns patterns.
#pragma once

#include "engine/cutting/column_bound.h"
#include "engine/cutting/knapsack.h"
#include "engine/cutting/simplex.h"

#include <cstdint>
#include <set>
#include <vector>

namespace engine::cutting {

class ColumnMaster {
public:
    ColumnMaster(const Task& task, std::vector<double> prices, std::vector<Triple> cuts);

    bool add(const Pattern& pattern);  // false: known already
    // Of the columns known; what cannot be met with the lack cost as it is raises that.
    void minimise(Effort& effort) { simplex_.minimise(effort); }
    bool is_lacking() const { return simplex_.lack() > 1e-5; }
    bool raise_lack_cost();

    // Duals as whole numbers, such that nothing in the knapsack's table exceeds most_value.
    std::vector<std::int32_t> values(const Knapsack& knapsack);
    // What a pattern's value is less for each half that it counts in a cut.
    std::vector<std::int32_t> penalties() const;
    const std::vector<Triple>& cuts() const { return cuts_; }
    // A pattern of the bar that is worth more lowers the objective by more than rounding could.
    std::int32_t worth_adding(int bar) const;
    Relaxed relaxed() const;

private:
    double bar_dual(std::size_t bar) const { return simplex_.dual(task_.items.size() + bar); }

    const Task& task_;
    double dearest_;
    std::vector<double> prices_;  // in parts of the dearest
    std::vector<Triple> cuts_;
    double lack_ = 1.0;  // how often what lacks was made dearer
    Simplex simplex_;
    std::vector<Pattern> patterns_;
    std::set<Pattern> known_;
    double scale_ = 1.0;
};

}  // namespace engine::cutting
