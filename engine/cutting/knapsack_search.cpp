#include "engine/cutting/knapsack_search.h"

#include <algorithm>

namespace engine::cutting {

KnapsackSearch::KnapsackSearch(const Knapsack& knapsack,
                               int bar,
                               std::int32_t at_least,
                               std::int64_t nodes)
    : knapsack_{knapsack},
      bar_{knapsack.task_->bars[static_cast<std::size_t>(bar)]},
      bar_place_{bar},
      best_{at_least},
      nodes_{nodes},
      nodes_left_{nodes},
      kept_out_(knapsack.task_->items.size(), 0) {}

void KnapsackSearch::run() {
    add_from({.row = 0, .left = bar_.capacity, .value = 0, .longest = 0});
}

// Every further set has a next item: tried in turn until the rest can no longer help.
void KnapsackSearch::add_from(const State& state) {
    const std::size_t cell = knapsack_.cell_of(state.left);
    const std::int32_t* bounds = knapsack_.table_.data() + cell;
    for (std::size_t r = state.row; r < knapsack_.worth_taking_.size(); ++r) {
        if (state.value + bounds[r * knapsack_.width_] <= best_ || nodes_left_ <= 0) return;
        take(r, state);
    }
}

// As many as there are and fit, then fewer.
void KnapsackSearch::take(std::size_t row, const State& state) {
    const int place = knapsack_.worth_taking_[row];
    const auto at = static_cast<std::size_t>(place);
    const Item& item = knapsack_.task_->items[at];
    if (item.weight > state.left || kept_out_[at] > 0) return;
    keep_apart(item, 1);
    std::int64_t most = std::min<std::int64_t>(item.demand, state.left / item.weight);
    if (kept_out_[at] > 0) most = 1;
    for (std::int64_t count = most; count > 0 && nodes_left_ > 0; --count) {
        --nodes_left_;
        const State next{.row = row + 1,
                         .left = state.left - count * item.weight,
                         .value = state.value +
                                  static_cast<std::int32_t>(count) * knapsack_.values_[at],
                         .longest = std::max(state.longest, item.longest)};
        taken_.push_back({place, static_cast<int>(count)});
        keep(next);
        add_from(next);
        taken_.pop_back();
    }
    keep_apart(item, -1);
}

void KnapsackSearch::keep(const State& state) {
    if (state.value <= best_) return;
    if (bar_.capacity - state.left > room(bar_, state.longest)) return;
    best_ = state.value;
    patterns_.push_back({bar_place_, taken_});
}

void KnapsackSearch::keep_apart(const Item& item, int change) {
    for (const int other : item.apart) kept_out_[static_cast<std::size_t>(other)] += change;
}

}  // namespace engine::cutting
