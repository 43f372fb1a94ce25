// The exact part of the knapsack: sets of items for one bar, depth first, the heaviest items first,
// left where the table says that nothing better can come of them.
#pragma once

#include "engine/cutting/knapsack.h"

#include <cstdint>
#include <vector>

namespace engine::cutting {

class KnapsackSearch {
public:
    KnapsackSearch(const Knapsack& knapsack, int bar, std::int32_t at_least, std::int64_t nodes);

    void run();

    std::vector<Pattern> patterns(std::size_t most);  // the most valuable first
    std::int32_t best_value() const { return best_in_all_; }
    bool is_complete() const { return is_complete_; }
    std::int64_t nodes_used() const { return nodes_ - nodes_left_in_all_; }

private:
    struct State {
        std::size_t row = 0;  // items from here on may still be added
        std::int64_t left = 0;
        std::int64_t value = 0;  // with many penalties far below 0
        std::int64_t longest = 0;
    };

    struct Worth {
        std::int32_t value = 0;
        Pattern pattern;
    };

    void add_from(const State& state);
    void take(std::size_t row, const State& state);
    void keep(const State& state);
    std::int64_t penalise(std::size_t item, int count);
    void keep_apart(const Item& item, int change);

    const Knapsack& knapsack_;
    const Bar& bar_;
    int bar_place_;
    std::int32_t at_least_;
    std::int32_t best_;  // with one item as the heaviest
    std::int32_t best_in_all_;
    std::int64_t nodes_;
    std::int64_t nodes_a_row_;
    std::int64_t nodes_left_;  // of those for one heaviest item
    std::int64_t nodes_left_in_all_;
    bool is_complete_ = true;
    std::vector<Part> taken_;
    std::vector<int> kept_out_;  // by item: how many that are taken must be apart from it
    std::vector<int> taken_of_;  // by triple: how many of its items are taken
    Pattern last_;
    std::vector<Worth> found_;
};

}  // namespace engine::cutting
