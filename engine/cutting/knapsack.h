// The most valuable contents of a bar, in whole numbers: a table over a coarse grid that never says
// too little, and a search in exact lengths that it guides.
//
// The table counts weights and room in whole cells, both rounded down: what fits in lengths fits in
// cells, so its value bounds the exact one from above whatever the grid.
#pragma once

#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <cstdint>
#include <span>
#include <vector>

namespace engine::cutting {

constexpr std::int32_t most_value = 1
                                    << 29;  // of the contents of a bar: far from what 32 bits hold

struct Best {
    std::int32_t bound = 0;  // no contents are worth more
    bool is_exact = true;    // the search was not cut off
    std::vector<Pattern>
        patterns;  // worth more than asked, the best first, each with another heaviest item
};

class Knapsack {
public:
    // `cells`: how fine the grid is for the largest bar.
    Knapsack(const Task& task, std::int64_t cells);

    // Nothing in the table would be more if one of each item were worth so much, at least 0.
    double most_in_table(std::span<const double> each) const;

    // Values of one of each item, at least 0; what they make of the table may not exceed
    // `most_value`.
    void set_values(std::span<const std::int32_t> values, Effort& effort);

    // What contents are worth less for each half of what they hold of a triple, rounded down. The
    // table does without; the search minds it.
    void set_penalties(std::vector<Triple> triples, std::vector<std::int32_t> penalties);

    // From the table alone.
    std::int32_t bound(int bar) const;
    // Searches for contents worth more than `at_least`, through at most `nodes` sets of items.
    Best best(int bar, std::int32_t at_least, std::int64_t nodes, Effort& effort) const;

    bool is_finest() const { return cell_ == 1; }

private:
    friend class KnapsackSearch;

    std::size_t most_of(std::size_t item) const;  // that are wanted and fit into any bar
    void add_item(std::size_t place);
    void allow_some(std::size_t place, std::size_t left, std::size_t step, std::int32_t value);
    std::size_t cell_of(std::int64_t length) const {
        return static_cast<std::size_t>(length / cell_);
    }
    const std::int32_t* row(std::size_t place) const { return table_.data() + place * width_; }

    const Task* task_;
    std::int64_t largest_ = 1;  // of the bars' capacities
    std::int64_t cell_ = 1;
    std::size_t width_ = 0;
    std::vector<int>
        worth_taking_;  // items of value, the heaviest first: one row of the table each
    std::vector<std::int32_t> values_;
    // Row r: the most value that items r, r + 1 ... give in so many cells; the last row is all
    // zeros.
    std::vector<std::int32_t> table_;
    std::vector<std::int32_t> spare_;
    std::vector<std::int32_t> penalties_;
    std::vector<std::vector<std::size_t>> triples_of_;  // by item: places in penalties_
};

}  // namespace engine::cutting
