// The exact part of the knapsack: sets of items for one bar, depth first, the heaviest items first, left
// where the table says that nothing better can come of them.
#pragma once

#include "engine/cutting/knapsack.h"

#include <cstdint>
#include <vector>

namespace engine::cutting {

class KnapsackSearch {
public:
    KnapsackSearch(const Knapsack& knapsack, int bar, std::int32_t at_least, std::int64_t nodes);

    void run();

    const std::vector<Pattern>& patterns() const { return patterns_; }
    std::int32_t best_value() const { return best_; }
    bool is_complete() const { return nodes_left_ > 0; }
    std::int64_t nodes_used() const { return nodes_ - nodes_left_; }

private:
    struct State {
        std::size_t row = 0;  // items from here on may still be added
        std::int64_t left = 0;
        std::int32_t value = 0;
        std::int64_t longest = 0;
    };

    void add_from(const State& state);
    void take(std::size_t row, const State& state);
    void keep(const State& state);
    void keep_apart(const Item& item, int change);

    const Knapsack& knapsack_;
    const Bar& bar_;
    int bar_place_;
    std::int32_t best_;
    std::int64_t nodes_;
    std::int64_t nodes_left_;
    std::vector<Part> taken_;
    std::vector<int> kept_out_;  // by item: how many that are taken must be apart from it
    std::vector<Pattern> patterns_;
};

}  // namespace engine::cutting
