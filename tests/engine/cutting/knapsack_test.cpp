#include "engine/cutting/knapsack.h"

#include "engine/cutting/column_bound.h"
#include "engine/cutting/triple_cut.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace engine::cutting;

namespace {

Task random_task(std::mt19937& random) {
    Task task;
    const auto items = static_cast<unsigned>(1 + random() % 6);
    for (unsigned i = 0; i < items; ++i) {
        const int weight = 5 + static_cast<int>(random() % 60);
        task.items.push_back({.weight = weight,
                              .longest = weight - 1,
                              .demand = 1 + static_cast<int>(random() % 3),
                              .kinds = {static_cast<int>(i)},
                              .apart = {}});
    }
    std::sort(task.items.begin(), task.items.end(),
              [](const Item& a, const Item& b) { return a.weight > b.weight; });
    task.bars = {{.capacity = 60 + static_cast<int>(random() % 90),
                  .hold = static_cast<int>(random() % 40),
                  .price = 1,
                  .bought = 0,
                  .supply = 5}};
    return task;
}

void keep_apart(Task& task, int a, int b) {
    for (const auto& [item, other] : {std::pair{a, b}, std::pair{b, a}}) {
        std::vector<int>& apart = task.items[static_cast<std::size_t>(item)].apart;
        if (std::find(apart.begin(), apart.end(), other) == apart.end()) apart.push_back(other);
    }
}

bool is_apart(const Task& task, const std::vector<int>& counts) {
    for (std::size_t i = 0; i < counts.size(); ++i) {
        for (const int other : task.items[i].apart) {
            const auto at = static_cast<std::size_t>(other);
            if (at == i ? counts[i] > 1 : counts[i] > 0 && counts[at] > 0) return false;
        }
    }
    return true;
}

struct Penalty {
    Triple triple;
    std::int32_t each = 0;
};

// Every choice of counts.
std::int32_t best_by_trying(const Task& task,
                            const std::vector<std::int32_t>& values,
                            const std::vector<Penalty>& penalties = {}) {
    std::vector<int> counts(task.items.size(), 0);
    std::int32_t best = 0;
    while (true) {
        Pattern pattern{0, {}};
        std::int32_t value = 0;
        for (std::size_t i = 0; i < counts.size(); ++i) {
            if (counts[i] > 0) pattern.parts.push_back({static_cast<int>(i), counts[i]});
            value += counts[i] * values[i];
        }
        for (const Penalty& penalty : penalties)
            value -= penalty.each * halves(penalty.triple, pattern);
        if (fits(task, pattern) && is_apart(task, counts)) best = std::max(best, value);
        std::size_t at = 0;
        while (at < counts.size() && counts[at] == task.items[at].demand) counts[at++] = 0;
        if (at == counts.size()) return best;
        ++counts[at];
    }
}

}  // namespace

TEST_CASE("the best contents of a bar are those found by trying all", "[cutting]") {
    std::mt19937 random(7);
    Effort effort(1'000'000'000, {});
    for (int run = 0; run < 2'000; ++run) {
        Task task = random_task(random);
        const auto last = static_cast<int>(task.items.size()) - 1;
        if (run % 3 == 0) keep_apart(task, 0, last);
        std::vector<std::int32_t> values;
        for (std::size_t i = 0; i < task.items.size(); ++i)
            values.push_back(static_cast<std::int32_t>(random() % 1'000));
        Knapsack knapsack(task, run % 2 == 0 ? 20 : 1'000);
        knapsack.set_values(values, effort);
        const std::int32_t least = best_by_trying(task, values);
        const Best best = knapsack.best(0, 0, 1'000'000, effort);
        CAPTURE(run);
        CHECK(best.is_exact);
        CHECK(best.bound == least);
        CHECK(knapsack.bound(0) >= least);
        for (const Pattern& pattern : best.patterns) CHECK(fits(task, pattern));
    }
}

TEST_CASE("a search that is cut off still bounds the best from above", "[cutting]") {
    std::mt19937 random(8);
    Effort effort(1'000'000'000, {});
    int cut_off = 0;
    for (int run = 0; run < 1'000; ++run) {
        const Task task = random_task(random);
        std::vector<std::int32_t> values;
        for (const Item& item : task.items)
            values.push_back(
                static_cast<std::int32_t>(item.weight * 10 + static_cast<int>(random() % 9)));
        Knapsack knapsack(task, 12);
        knapsack.set_values(values, effort);
        const Best best = knapsack.best(0, 0, 3, effort);
        CHECK(best.bound >= best_by_trying(task, values));
        cut_off += best.is_exact ? 0 : 1;
    }
    CHECK(cut_off > 100);
}

TEST_CASE("contents that hold two of a triple are worth less by its penalty", "[cutting]") {
    std::mt19937 random(9);
    Effort effort(1'000'000'000, {});
    int lowered = 0;
    for (int run = 0; run < 2'000; ++run) {
        const Task task = random_task(random);
        const int last = static_cast<int>(task.items.size()) - 1;
        if (last < 3) continue;
        std::vector<std::int32_t> values;
        for (int i = 0; i <= last; ++i)
            values.push_back(static_cast<std::int32_t>(random() % 1'000));
        const std::vector<Penalty> penalties{
            {{0, 1, last}, static_cast<std::int32_t>(random() % 900)},
            {{1, 2, last}, static_cast<std::int32_t>(random() % 300)}};
        Knapsack knapsack(task, run % 2 == 0 ? 20 : 1'000);
        knapsack.set_values(values, effort);
        knapsack.set_penalties({penalties[0].triple, penalties[1].triple},
                               {penalties[0].each, penalties[1].each});
        const std::int32_t most = best_by_trying(task, values, penalties);
        CAPTURE(run);
        const Best best = knapsack.best(0, 0, 1'000'000, effort);
        CHECK(best.is_exact);
        CHECK(best.bound == most);
        CHECK(knapsack.bound(0) >= most);
        CHECK(knapsack.best(0, 0, 3, effort).bound >= most);
        if (most < best_by_trying(task, values)) ++lowered;
    }
    CHECK(lowered > 100);
}

// 30 pieces of 1 are worth 30 in a bar of 1000, whose cells are 50 wide: 21 of them.
TEST_CASE("more pieces than the grid has cells are not forgotten", "[cutting]") {
    Task task;
    task.items = {{.weight = 1, .longest = 1, .demand = 30, .kinds = {0}, .apart = {}}};
    task.bars = {{.capacity = 1'000, .hold = 0, .price = 1, .bought = 0, .supply = 1}};
    Effort effort(1'000'000, {});
    Knapsack knapsack(task, 20);
    knapsack.set_values(std::vector<std::int32_t>{1}, effort);
    CHECK(knapsack.bound(0) >= 30);
    CHECK(knapsack.best(0, 0, 1'000, effort).bound == 30);
}
