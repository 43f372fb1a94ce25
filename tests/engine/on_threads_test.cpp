#include "engine/on_threads.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <mutex>
#include <set>
#include <stdexcept>
#include <thread>
#include <vector>

TEST_CASE("each of many things is worked on once", "[engine][threads]") {
    for (const std::size_t threads : {1U, 4U}) {
        for (const std::size_t count : {0U, 1U, 2U, 1000U}) {
            std::vector<std::atomic<int>> calls(count);
            CHECK(engine::for_each_on_threads(
                count, [&](std::size_t i) { ++calls[i]; }, {}, threads));
            for (const auto& one : calls) CHECK(one == 1);
        }
    }
}

TEST_CASE("work on threads ends early when it is told to", "[engine][threads]") {
    std::atomic<int> calls = 0;
    int asked = 0;
    const bool is_done = engine::for_each_on_threads(
        100'000'000, [&](std::size_t) { ++calls; }, [&] { return ++asked < 10; }, 4);
    CHECK_FALSE(is_done);
    CHECK(asked == 10);
    CHECK(calls < 100'000'000);
    CHECK_FALSE(engine::for_each_on_threads(
        1, [&](std::size_t) { calls = -1; }, [] { return false; }));
    CHECK(calls >= 0);
}

TEST_CASE("what is thrown on any thread comes out where the work was asked for",
          "[engine][threads]") {
    for (const std::size_t threads : {1U, 4U}) {
        std::atomic<int> calls = 0;
        const auto act = [&](std::size_t i) {
            ++calls;
            if (i == 17) throw std::runtime_error("no memory");
        };
        CHECK_THROWS_AS(engine::for_each_on_threads(100'000'000, act, {}, threads),
                        std::runtime_error);
        CHECK(calls < 100'000'000);
    }
}

TEST_CASE("work is spread over other threads", "[engine][threads]") {
    std::mutex guard;
    std::set<std::thread::id> seen;
    std::atomic<std::size_t> waiting = 0;
    // Each waits until all are there, so that no thread can do the work of another one.
    const auto act = [&](std::size_t) {
        {
            const std::lock_guard lock(guard);
            seen.insert(std::this_thread::get_id());
        }
        ++waiting;
        while (waiting < 3) std::this_thread::yield();
    };
    CHECK(engine::for_each_on_threads(3, act, {}, 3));
    CHECK(seen.size() == 3);
}
