#include "engine/cutting/first_fit.h"

#include "engine/cutting/nest.h"

#include "tests/engine/cutting/nest_checks.h"
#include "tests/engine/cutting/nest_files.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <functional>
#include <random>
#include <vector>

using namespace engine::cutting;

namespace {

Task task_of_weights(const std::vector<std::pair<int, int>>& weights, std::vector<Bar> bars) {
    Task task{.items = {}, .bars = std::move(bars)};
    for (const auto& [weight, demand] : weights) {
        task.items.push_back({.weight = weight,
                              .longest = weight,
                              .demand = demand,
                              .kinds = {static_cast<int>(task.items.size())},
                              .apart = {}});
    }
    return task;
}

Effort no_end() { return Effort(1'000'000'000, {}); }

// The rule as it stands in textbooks, piece by piece.
std::int64_t bars_by_first_fit(std::vector<std::int64_t> lengths, std::int64_t capacity) {
    std::sort(lengths.begin(), lengths.end(), std::greater<>());
    std::vector<std::int64_t> used;
    for (const auto length : lengths) {
        const auto bar = std::find_if(used.begin(), used.end(),
                                      [&](std::int64_t it) { return it + length <= capacity; });
        if (bar == used.end())
            used.push_back(length);
        else
            *bar += length;
    }
    return static_cast<std::int64_t>(used.size());
}

}  // namespace

TEST_CASE("each piece goes into the first bar that has room, the longest first", "[cutting]") {
    auto effort = no_end();
    const Task task =
        task_of_weights({{7, 1}, {5, 2}, {3, 2}, {2, 1}},
                        {{.capacity = 10, .hold = 0, .price = 1, .bought = 10, .supply = 6}});
    const auto packing = first_fit(task, effort);
    REQUIRE(packing);
    REQUIRE(packing->size() == 3);
    CHECK((*packing)[0].pattern.parts == std::vector<Part>{{0, 1}, {2, 1}});
    CHECK((*packing)[1].pattern.parts == std::vector<Part>{{1, 2}});
    CHECK((*packing)[2].pattern.parts == std::vector<Part>{{2, 1}, {3, 1}});
}

TEST_CASE(
    "bars on hand are begun first, then those with the most room for the money, as long as "
    "there are any",
    "[cutting]") {
    auto effort = no_end();
    Task task = task_of_weights({{6, 4}},
                                {{.capacity = 8, .hold = 0, .price = 5, .bought = 8, .supply = 4},
                                 {.capacity = 14, .hold = 0, .price = 7, .bought = 14, .supply = 1},
                                 {.capacity = 6, .hold = 0, .price = 0, .bought = 0, .supply = 1}});
    const auto packing = first_fit(task, effort);
    REQUIRE(packing);
    std::vector<int> bars;
    for (const auto& filled : *packing) bars.push_back(filled.pattern.bar);
    CHECK(bars == std::vector<int>{2, 1, 0});
    task.bars[0].supply = 0;
    CHECK_FALSE(first_fit(task, effort));
}

TEST_CASE("what the vice must hold is left room for", "[cutting]") {
    auto effort = no_end();
    // Pieces of 4 lower a bar of 12 that must be held by 6 to 10: two go into each, not three.
    const Task task = task_of_weights(
        {{4, 6}}, {{.capacity = 12, .hold = 6, .price = 1, .bought = 12, .supply = 6}});
    const auto packing = first_fit(task, effort);
    REQUIRE(packing);
    CHECK(packing->size() == 3);
    for (const auto& filled : *packing) CHECK(fits(task, filled.pattern));
}

TEST_CASE("no plan is dearer than first fit, however many lengths there are and little time",
          "[cutting][invariants]") {
    for (std::uint32_t seed = 0; seed < 60; ++seed) {
        std::mt19937 random(seed);
        std::vector<std::int64_t> lengths;
        for (auto n = 50 + random() % 450; n > 0; --n)
            lengths.push_back(35 + static_cast<std::int64_t>(random() % 592));
        std::vector<engine::NestPiece> pieces;
        for (const auto length : lengths) pieces.push_back({length, 1});
        const auto problem = tests::one_bar_problem(1000, pieces);
        const auto nest = engine::nest(problem, {.work = 20'000'000, .go_on = {}});
        CAPTURE(seed, lengths.size());
        REQUIRE(nest);
        CHECK(tests::why_not(problem, nest->plan) == "");
        CHECK(nest->plan.cost <= bars_by_first_fit(lengths, 1000));
    }
}
