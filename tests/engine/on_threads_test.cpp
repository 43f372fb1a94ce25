#include "engine/on_threads.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <vector>

TEST_CASE("each of many things is worked on once", "[engine][threads]") {
    for (const std::size_t count : {0U, 1U, 2U, 1000U}) {
        std::vector<std::atomic<int>> calls(count);
        CHECK(engine::for_each_on_threads(count, [&](std::size_t i) { ++calls[i]; }));
        for (const auto& one : calls) CHECK(one == 1);
    }
}

TEST_CASE("work on threads ends early when it is told to", "[engine][threads]") {
    std::atomic<int> calls = 0;
    int asked = 0;
    const bool is_done = engine::for_each_on_threads(
        100'000'000, [&](std::size_t) { ++calls; }, [&] { return ++asked < 10; });
    CHECK_FALSE(is_done);
    CHECK(asked == 10);
    CHECK(calls < 100'000'000);
    CHECK_FALSE(engine::for_each_on_threads(
        1, [&](std::size_t) { calls = -1; }, [] { return false; }));
    CHECK(calls >= 0);
}
