#include "engine/cutting/knapsack.h"

#include "engine/cutting/knapsack_search.h"

#include <algorithm>

namespace engine::cutting {

namespace {

constexpr std::int64_t most_cells = 16'000'000;  // of the whole table: 64 MB

// to[c] = max(from[c], from[c - step] + value): at most one more of what takes `step` cells.
void allow_one(const std::int32_t* from,
               std::int32_t* to,
               std::size_t width,
               std::size_t step,
               std::int32_t value) {
    std::copy(from, from + std::min(step, width), to);
    for (std::size_t c = step; c < width; ++c) to[c] = std::max(from[c], from[c - step] + value);
}

// As many as there is room for: in blocks of a step, so that each block reads what is finished.
void allow_any(const std::int32_t* from,
               std::int32_t* to,
               std::size_t width,
               std::size_t step,
               std::int32_t value) {
    std::copy(from, from + std::min(step, width), to);
    for (std::size_t begin = step; begin < width; begin += step) {
        const std::size_t end = std::min(width, begin + step);
        const std::int32_t* before = to + begin - step;
        for (std::size_t c = begin; c < end; ++c)
            to[c] = std::max(from[c], before[c - begin] + value);
    }
}

std::int64_t largest_capacity(const Task& task) {
    std::int64_t largest = 1;
    for (const Bar& bar : task.bars) largest = std::max(largest, bar.capacity);
    return largest;
}

}  // namespace

Knapsack::Knapsack(const Task& task, std::int64_t cells)
    : task_{&task}, triples_of_(task.items.size()) {
    largest_ = largest_capacity(task);
    cells = std::min(cells, most_cells / (static_cast<std::int64_t>(task.items.size()) + 1));
    cell_ = std::max<std::int64_t>(1, (largest_ + cells - 1) / cells);
    width_ = cell_of(largest_) + 1;
}

// What takes cells, at the most for each cell; what takes none, as often as fits in lengths.
double Knapsack::most_in_table(std::span<const double> each) const {
    double by_cell = 0;
    double without_cells = 0;
    for (std::size_t i = 0; i < each.size(); ++i) {
        const std::size_t step = cell_of(task_->items[i].weight);
        if (step == 0)
            without_cells += each[i] * static_cast<double>(most_of(i));
        else
            by_cell = std::max(by_cell, each[i] / static_cast<double>(step));
    }
    return by_cell * static_cast<double>(width_) + without_cells;
}

std::size_t Knapsack::most_of(std::size_t item) const {
    const Item& of = task_->items[item];
    return static_cast<std::size_t>(std::min<std::int64_t>(of.demand, largest_ / of.weight));
}

void Knapsack::set_values(std::span<const std::int32_t> values, Effort& effort) {
    values_.assign(values.begin(), values.end());
    worth_taking_.clear();
    for (std::size_t i = 0; i < values_.size(); ++i) {
        if (values_[i] > 0 && task_->items[i].demand > 0)
            worth_taking_.push_back(static_cast<int>(i));
    }
    const std::size_t rows = worth_taking_.size();
    table_.resize((rows + 1) * width_);
    spare_.resize(width_);
    std::fill_n(table_.begin() + static_cast<std::ptrdiff_t>(rows * width_), width_, 0);
    for (std::size_t r = rows; r-- > 0;) add_item(r);
    effort.spend(static_cast<std::int64_t>((rows + 1) * width_ / 2));
}

void Knapsack::add_item(std::size_t place) {
    const std::size_t item = static_cast<std::size_t>(worth_taking_[place]);
    std::int32_t* to = table_.data() + place * width_;
    const std::int32_t* from = row(place + 1);
    const std::size_t step = cell_of(task_->items[item].weight);
    const std::int32_t value = values_[item];
    const std::size_t most = step == 0 ? 0 : (width_ - 1) / step;
    if (step > 0 && most_of(item) >= most) return allow_any(from, to, width_, step, value);
    allow_some(place, most_of(item), step, value);
}

// 1, 2, 4 ... together: every number up to `left`. In turns to the row and beside it, the last to
// it.
void Knapsack::allow_some(std::size_t place,
                          std::size_t left,
                          std::size_t step,
                          std::int32_t value) {
    std::vector<std::size_t> lots;
    for (std::size_t together = 1; left > 0; left -= lots.back(), together *= 2)
        lots.push_back(std::min(together, left));
    const std::int32_t* from = row(place + 1);
    if (lots.empty()) std::copy(from, from + width_, table_.data() + place * width_);
    for (std::size_t l = 0; l < lots.size(); ++l) {
        const bool is_to_row = (lots.size() - l) % 2 == 1;
        std::int32_t* to = is_to_row ? table_.data() + place * width_ : spare_.data();
        allow_one(from, to, width_, lots[l] * step, static_cast<std::int32_t>(lots[l]) * value);
        from = to;
    }
}

void Knapsack::set_penalties(std::vector<Triple> triples, std::vector<std::int32_t> penalties) {
    penalties_ = std::move(penalties);
    triples_of_.assign(task_->items.size(), {});
    for (std::size_t t = 0; t < triples.size(); ++t) {
        for (const int item : triples[t]) {
            if (penalties_[t] > 0) triples_of_[static_cast<std::size_t>(item)].push_back(t);
        }
    }
}

std::int32_t Knapsack::bound(int bar) const {
    const std::int64_t capacity = task_->bars[static_cast<std::size_t>(bar)].capacity;
    return capacity < 0 ? 0 : row(0)[cell_of(capacity)];
}

Best Knapsack::best(int bar, std::int32_t at_least, std::int64_t nodes, Effort& effort) const {
    Best best{.bound = bound(bar), .is_exact = true, .patterns = {}};
    if (best.bound <= at_least) return best;
    KnapsackSearch search(*this, bar, at_least, nodes);
    search.run();
    best.patterns = search.patterns(3 + worth_taking_.size() / 6);
    best.is_exact = search.is_complete();
    if (best.is_exact) best.bound = search.best_value();
    effort.spend(search.nodes_used() * 8);
    return best;
}

}  // namespace engine::cutting
