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
      at_least_{at_least},
      best_{at_least},
      best_in_all_{at_least},
      nodes_{nodes},
      nodes_a_row_{std::max<std::int64_t>(100, nodes / 8)},
      nodes_left_{nodes},
      nodes_left_in_all_{nodes},
      kept_out_(knapsack.task_->items.size(), 0),
      taken_of_(knapsack.penalties_.size(), 0) {}

// The best for each item that may be the heaviest: many columns of different items at once take the
// relaxation further than the few best.
void KnapsackSearch::run() {
    const State nothing{.row = 0, .left = bar_.capacity, .value = 0, .longest = 0};
    const std::int32_t* bounds = knapsack_.table_.data() + knapsack_.cell_of(bar_.capacity);
    for (std::size_t r = 0; r < knapsack_.worth_taking_.size(); ++r) {
        if (bounds[r * knapsack_.width_] <= at_least_) return;
        best_ = at_least_;
        nodes_left_ = std::min(nodes_a_row_, nodes_left_in_all_);
        const std::int64_t before = nodes_left_;
        take(r, nothing);
        nodes_left_in_all_ -= before - nodes_left_;
        is_complete_ = is_complete_ && nodes_left_ > 0;
        if (best_ > at_least_) found_.push_back({best_, std::move(last_)});
        best_in_all_ = std::max(best_in_all_, best_);
    }
}

std::vector<Pattern> KnapsackSearch::patterns(std::size_t most) {
    std::stable_sort(found_.begin(), found_.end(),
                     [](const Worth& a, const Worth& b) { return a.value > b.value; });
    std::vector<Pattern> patterns;
    for (std::size_t f = 0; f < std::min(most, found_.size()); ++f)
        patterns.push_back(found_[f].pattern);
    return patterns;
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
                         .value = state.value - penalise(at, static_cast<int>(count)) +
                                  count * knapsack_.values_[at],
                         .longest = std::max(state.longest, item.longest)};
        taken_.push_back({place, static_cast<int>(count)});
        keep(next);
        add_from(next);
        taken_.pop_back();
        penalise(at, -static_cast<int>(count));
    }
    keep_apart(item, -1);
}

// Takes so many more of an item. Gives what that costs: never less than nothing as more is taken,
// so that the table's bound on the rest still holds.
std::int64_t KnapsackSearch::penalise(std::size_t item, int count) {
    std::int64_t sum = 0;
    for (const std::size_t t : knapsack_.triples_of_[item]) {
        const int before = taken_of_[t] / 2;
        taken_of_[t] += count;
        sum += std::int64_t{taken_of_[t] / 2 - before} * knapsack_.penalties_[t];
    }
    return sum;
}

void KnapsackSearch::keep(const State& state) {
    if (state.value <= best_) return;
    if (bar_.capacity - state.left > room(bar_, state.longest)) return;
    best_ = static_cast<std::int32_t>(state.value);
    last_ = {bar_place_, taken_};
}

void KnapsackSearch::keep_apart(const Item& item, int change) {
    for (const int other : item.apart) kept_out_[static_cast<std::size_t>(other)] += change;
}

}  // namespace engine::cutting
