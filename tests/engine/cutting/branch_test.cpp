#include "engine/cutting/branch.h"

#include "engine/cutting/dive.h"
#include "engine/cutting/pair.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace engine::cutting;

namespace {

int drawn(std::mt19937& random, int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
}

// Bars that hold little more than all items together, so that it is no matter of course.
Task tight_task(std::mt19937& random) {
    Task task;
    const int kerf = drawn(random, 0, 3);
    const int items = drawn(random, 2, 5);
    const int least = drawn(random, 6, 20);
    for (int i = 0; i < items; ++i) {
        const int length = drawn(random, least, 45) * 10 + i;
        task.items.push_back({.weight = length + kerf,
                              .longest = length,
                              .demand = drawn(random, 1, 3),
                              .kinds = {i},
                              .apart = {}});
    }
    std::sort(task.items.begin(), task.items.end(),
              [](const Item& a, const Item& b) { return a.weight > b.weight; });
    const int bars = drawn(random, 2, 4);
    const std::int64_t each = wanted_weight(task) / bars + drawn(random, 0, 12);
    const int hold = drawn(random, 0, 2) == 0 ? drawn(random, 100, 400) : 0;
    const Bar bar{.capacity = each, .hold = hold, .price = 1, .bought = each, .supply = bars};
    task.bars = {bar, bar};
    task.bars[1].supply = 1;
    task.bars[1].capacity += drawn(random, -20, 20);
    task.bars[0].supply -= 1;
    return task;
}

struct Open {
    std::size_t bar = 0;
    std::int64_t weight = 0;
    std::int64_t longest = 0;
    std::vector<int> items;
};

bool may_join(const Task& task, const Open& open, int item) {
    const std::vector<int>& apart = task.items[static_cast<std::size_t>(item)].apart;
    return std::none_of(open.items.begin(), open.items.end(), [&](int other) {
        return std::find(apart.begin(), apart.end(), other) != apart.end();
    });
}

// Whether there is a packing, by trying each item in each bar.
bool has_packing(Task& task, std::vector<Open>& bars) {
    const auto next = std::find_if(task.items.begin(), task.items.end(),
                                   [](const Item& item) { return item.demand > 0; });
    if (next == task.items.end())
        return std::all_of(bars.begin(), bars.end(), [&](const Open& open) {
            return open.weight <= room(task.bars[open.bar], open.longest);
        });
    const int place = static_cast<int>(next - task.items.begin());
    --next->demand;
    bool is_found = false;
    for (std::size_t b = 0; b < bars.size() && !is_found; ++b) {
        const bool is_like_last = b > 0 && bars[b].items.empty() && bars[b - 1].items.empty() &&
                                  bars[b].bar == bars[b - 1].bar;
        const bool has_room = bars[b].weight + next->weight <= task.bars[bars[b].bar].capacity;
        if (is_like_last || !has_room || !may_join(task, bars[b], place)) continue;
        const Open before = bars[b];
        bars[b].weight += next->weight;
        bars[b].longest = std::max(bars[b].longest, next->longest);
        bars[b].items.push_back(place);
        is_found = has_packing(task, bars);
        bars[b] = before;
    }
    ++next->demand;
    return is_found;
}

bool has_packing(Task task) {
    std::vector<Open> bars;
    for (std::size_t b = 0; b < task.bars.size(); ++b)
        bars.insert(bars.end(), static_cast<std::size_t>(task.bars[b].supply), Open{b, 0, 0, {}});
    return has_packing(task, bars);
}

std::optional<Pair> any_pair(const Task& task, std::mt19937& random) {
    std::vector<Pair> pairs;
    for (int a = 0; a < static_cast<int>(task.items.size()); ++a) {
        for (int b = a; b < static_cast<int>(task.items.size()); ++b) {
            const Item& item = task.items[static_cast<std::size_t>(a)];
            const bool is_apart =
                std::find(item.apart.begin(), item.apart.end(), b) != item.apart.end();
            if (!is_apart && (a != b || item.demand > 1)) pairs.push_back({a, b});
        }
    }
    if (pairs.empty()) return std::nullopt;
    return pairs[random() % pairs.size()];
}

}  // namespace

TEST_CASE("one of two branches holds what there is, and neither more", "[cutting]") {
    std::mt19937 random(21);
    int possible = 0;
    int lost = 0;  // to one of the branches
    for (int run = 0; run < 600; ++run) {
        Task task = tight_task(random);
        for (int depth = 0; depth < 4; ++depth) {
            const std::optional<Pair> pair = any_pair(task, random);
            if (!pair) break;
            const Task together = tied(task, *pair, {}).task;
            const Task apart = kept_apart(task, *pair, {}).task;
            CAPTURE(run, depth);
            const bool is_possible = has_packing(task);
            const bool is_either = has_packing(together) || has_packing(apart);
            CHECK(is_possible == is_either);
            possible += is_possible ? 1 : 0;
            lost += is_possible && !(has_packing(together) && has_packing(apart)) ? 1 : 0;
            task = random() % 2 == 0 ? together : apart;
        }
    }
    CHECK(possible > 100);
    CHECK(lost > 100);
}

TEST_CASE("no need that is proven is short where there is a packing, with cuts and branches",
          "[cutting]") {
    std::mt19937 random(22);
    int possible = 0;
    for (int run = 0; run < 1'000; ++run) {
        Task task = tight_task(random);
        for (int depth = 0; depth < 3; ++depth) {
            Effort effort(20'000'000, {});
            const bool is_possible = has_packing(task);
            int short_needs = 0;
            const Relaxed relaxed = relax(task,
                                          {.prices = prices_by_room(task),
                                           .patterns = {},
                                           .is_enough =
                                               [&](const Need& need) {
                                                   short_needs += is_short(task, need) ? 1 : 0;
                                                   return false;
                                               },
                                           .care = Care::fine,
                                           .cut_rounds = 5},
                                          effort);
            CAPTURE(run, depth);
            if (is_possible) CHECK(short_needs == 0);
            possible += is_possible ? 1 : 0;
            const std::optional<Pair> pair = undecided_pair(task, relaxed);
            if (!pair) break;
            task =
                random() % 2 == 0 ? tied(task, *pair, {}).task : kept_apart(task, *pair, {}).task;
        }
    }
    CHECK(possible > 100);
}

TEST_CASE("bars that hold all items, or cannot, are settled as by trying", "[cutting]") {
    std::mt19937 random(23);
    int refuted = 0;
    int packed = 0;
    for (int run = 0; run < 600; ++run) {
        const Task task = tight_task(random);
        Effort effort(100'000'000, {});
        const Settled settled = branch(task, {}, 50'000'000, effort);
        CAPTURE(run);
        const bool is_possible = has_packing(task);
        CHECK(settled.is_refuted == !is_possible);
        CHECK(settled.packing.has_value() == is_possible);
        refuted += settled.is_refuted ? 1 : 0;
        if (!settled.packing) continue;
        ++packed;
        std::vector<int> left;
        for (const Item& item : task.items) left.push_back(item.demand);
        for (const Filled& filled : in_items(task, *settled.packing)) {
            CHECK(fits(task, filled.pattern));
            for (const Part& part : filled.pattern.parts)
                left[static_cast<std::size_t>(part.item)] -= part.count * filled.times;
        }
        CHECK(std::all_of(left.begin(), left.end(), [](int n) { return n == 0; }));
    }
    CHECK(refuted > 50);
    CHECK(packed > 50);
}
