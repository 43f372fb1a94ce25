#include "engine/cutting/count_vectors.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace engine::cutting;

namespace {

std::vector<CountVector> all_by_trying(const std::vector<Bar>& bars,
                                       const Need& need,
                                       std::int64_t from,
                                       const Price& below) {
    std::vector<CountVector> found;
    CountVector vector{{}, std::vector<int>(bars.size(), 0)};
    const auto price = [&] {
        Price sum;
        for (std::size_t b = 0; b < bars.size(); ++b) {
            sum.cost += bars[b].price * vector.counts[b];
            sum.bought += bars[b].bought * vector.counts[b];
        }
        return sum;
    };
    while (true) {
        vector.price = price();
        if (vector.price.cost >= from && vector.price < below && meets(vector, need))
            found.push_back(vector);
        std::size_t at = 0;
        while (at < bars.size() && vector.counts[at] == bars[at].supply) vector.counts[at++] = 0;
        if (at == bars.size()) break;
        ++vector.counts[at];
    }
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace

TEST_CASE("all counts of bars that meet a need are listed, the cheapest first", "[cutting]") {
    std::mt19937 random(11);
    for (int run = 0; run < 500; ++run) {
        std::vector<Bar> bars;
        Need need;
        for (unsigned b = 0; b < 1 + random() % 3; ++b) {
            const int capacity = 20 + static_cast<int>(random() % 50);
            bars.push_back({.capacity = capacity,
                            .hold = 0,
                            .price = 5 + static_cast<int>(random() % 30),
                            .bought = capacity,
                            .supply = static_cast<int>(random() % 6)});
            need.worth.push_back(static_cast<int>(random() % 50));
        }
        need.wanted = static_cast<int>(random() % 200);
        const Price below{static_cast<int>(random() % 300), static_cast<int>(random() % 200)};
        const std::int64_t from = static_cast<int>(random() % 60);
        const CountVectors listed = count_vectors(bars, {need}, from, below, 100'000);
        CAPTURE(run);
        CHECK(listed.is_complete);
        CHECK(listed.vectors == all_by_trying(bars, need, from, below));
        for (const CountVector& vector : all_by_trying(bars, need, 0, {1'000'000, 0}))
            CHECK(vector.price.cost >= least_cost(bars, need));
    }
}

TEST_CASE("a list that is cut short says so", "[cutting]") {
    const std::vector<Bar> bars{
        {.capacity = 10, .hold = 0, .price = 3, .bought = 10, .supply = 100},
        {.capacity = 12, .hold = 0, .price = 4, .bought = 12, .supply = 100}};
    const Need need{{10, 12}, 300};
    CHECK(!count_vectors(bars, {need}, 0, {500, 0}, 20).is_complete);
    CHECK(count_vectors(bars, {need}, 0, {92, 0}, 1'000).is_complete);
}

TEST_CASE("the least cost of a need is rounded up", "[cutting]") {
    const std::vector<Bar> bars{{.capacity = 9, .hold = 0, .price = 10, .bought = 9, .supply = 100},
                                {.capacity = 6, .hold = 0, .price = 7, .bought = 6, .supply = 100}};
    CHECK(least_cost(bars, {{9, 6}, 150}) ==
          167);  // 166.67: Gilmore & Gomory's three bars, by material
    CHECK(least_cost(bars, {{9, 6}, 0}) == 0);
}
