#include "engine/cutting/best_fill.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>
#include <vector>

using namespace engine::cutting;

namespace {

Task one_of_each(const std::vector<int>& weights, int capacity, int bars) {
    Task task{
        .items = {},
        .bars = {
            {.capacity = capacity, .hold = 0, .price = 1, .bought = capacity, .supply = bars}}};
    for (const int weight : weights) {
        task.items.push_back({.weight = weight,
                              .longest = weight,
                              .demand = 1,
                              .kinds = {static_cast<int>(task.items.size())},
                              .apart = {}});
    }
    return task;
}

// The least that can be left free beside the heaviest, by every choice.
std::int64_t least_free(const Task& task) {
    const auto others = task.items.size() - 1;
    std::int64_t least = task.bars[0].capacity;
    for (unsigned chosen = 0; chosen < 1U << others; ++chosen) {
        std::int64_t free = task.bars[0].capacity - task.items[0].weight;
        for (std::size_t i = 0; i < others; ++i)
            free -= (chosen >> i) % 2 == 1 ? task.items[i + 1].weight : 0;
        if (free >= 0) least = std::min(least, free);
    }
    return least;
}

}  // namespace

TEST_CASE("a piece that does not fit beside the longest is passed over for shorter ones",
          "[cutting]") {
    const Task task = one_of_each({6, 5, 4}, 10, 1);
    BestFill fill(task);
    CHECK(fill.parts({1, 1, 1}, 0, 0) == std::vector<Part>{{0, 1}, {2, 1}});
}

TEST_CASE("beside the longest piece a bar is filled as full as any choice fills it",
          "[cutting][invariants]") {
    for (std::uint32_t seed = 0; seed < 300; ++seed) {
        std::mt19937 random(seed);
        std::vector<int> weights;
        for (int i = 0; i < 10; ++i) weights.push_back(20 + static_cast<int>(random() % 400));
        std::sort(weights.rbegin(), weights.rend());
        const Task task = one_of_each(weights, 1000, 1);
        BestFill fill(task);
        const auto parts = fill.parts(std::vector<int>(weights.size(), 1), 0, 0);
        CAPTURE(seed);
        REQUIRE_FALSE(parts.empty());
        CHECK(parts[0].item == 0);
        CHECK(1000 - weight(task, parts) == least_free(task));
    }
}
