#include "engine/measure/needs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace engine;

namespace {

using Things = std::vector<std::size_t>;

Needs needs_of(const std::vector<Things>& lists) {
    Needs needs;
    for (const auto& list : lists) {
        needs.on.insert(needs.on.end(), list.begin(), list.end());
        needs.close_thing();
    }
    return needs;
}

std::vector<Things> any_lists(std::mt19937& random) {
    std::vector<Things> lists(1 + random() % 12);
    const auto arrows = random() % (2 * lists.size());
    for (std::size_t i = 0; i < arrows; ++i) {
        auto& list = lists[random() % lists.size()];
        list.push_back(random() % lists.size());
    }
    return lists;
}

bool needs_directly(const Needs& needs, std::size_t thing, std::size_t needed) {
    for (auto i = needs.first[thing]; i < needs.first[thing + 1]; ++i) {
        if (needs.on[i] == needed) return true;
    }
    return false;
}

// Whether `thing` needs `needed` in one step or more, by trying all.
bool needs_at_last(const Needs& needs, std::size_t thing, std::size_t needed) {
    std::vector<bool> seen(needs.count());
    Things open{thing};
    while (!open.empty()) {
        const auto from = open.back();
        open.pop_back();
        for (auto i = needs.first[from]; i < needs.first[from + 1]; ++i) {
            if (needs.on[i] == needed) return true;
            if (!seen[needs.on[i]]) open.push_back(needs.on[i]);
            seen[needs.on[i]] = true;
        }
    }
    return false;
}

}  // namespace

TEST_CASE("needed things come first", "[engine][needs]") {
    const auto needs = needs_of({{1, 2}, {2}, {}});
    CHECK(need_order(needs).things == Things{2, 1, 0});
}

TEST_CASE("of a long loop only the beginning is told", "[engine][needs]") {
    const auto needs = needs_of({{1}, {2}, {3}, {4}, {0}});
    const auto order = need_order(needs);
    LoopFinder loops{needs, order};
    CHECK(loops.loop_of(3, 10) == Things{3, 4, 0, 1, 2});
    CHECK(loops.loop_of(1, 2) == Things{1, 2});
}

TEST_CASE("any needs are ordered and every loop is found", "[engine][needs][property]") {
    const auto seed = GENERATE(range(1U, 9U));
    CAPTURE(seed);
    std::mt19937 random{seed};
    for (int i = 0; i < 300; ++i) {
        const auto needs = needs_of(any_lists(random));
        const auto order = need_order(needs);
        LoopFinder loops{needs, order};
        Things place(needs.count());
        REQUIRE(order.things.size() == needs.count());
        for (std::size_t at = 0; at < needs.count(); ++at) place[order.things[at]] = at;
        for (std::size_t thing = 0; thing < needs.count(); ++thing) {
            REQUIRE(order.is_on_loop(needs, thing) == needs_at_last(needs, thing, thing));
            for (auto n = needs.first[thing]; n < needs.first[thing + 1]; ++n) {
                const bool is_alike = order.group_of[needs.on[n]] == order.group_of[thing];
                REQUIRE((is_alike || place[needs.on[n]] < place[thing]));
            }
            if (!order.is_on_loop(needs, thing)) continue;
            const auto loop = loops.loop_of(thing, needs.count());
            REQUIRE(loop.front() == thing);
            for (std::size_t step = 0; step < loop.size(); ++step)
                REQUIRE(needs_directly(needs, loop[step], loop[(step + 1) % loop.size()]));
        }
    }
}

TEST_CASE("a hundred thousand things that share loops are ordered in time", "[engine][needs]") {
    constexpr std::size_t count = 100'000;
    std::vector<Things> lists(count);
    for (std::size_t i = 1; i < count; ++i) {
        lists[0].push_back(i);
        lists[i] = {0};
    }
    const auto needs = needs_of(lists);
    const auto order = need_order(needs);
    LoopFinder loops{needs, order};
    std::size_t found = 0;
    for (std::size_t i = 0; i < count; ++i) found += loops.loop_of(i, 12).size();
    CHECK(found == 2 * count);
}
