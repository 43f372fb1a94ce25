#include "model/schedule/first_fit.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

TEST_CASE("no bin has room while there is none", "[model][schedule][bars]") {
    CHECK(model::FirstFit{}.first_with(0) == model::FirstFit::none);
}

TEST_CASE("the first bin with room is the one that a search from the front finds",
          "[model][schedule][bars]") {
    std::mt19937 dice{17};
    model::FirstFit tree;
    std::vector<std::int64_t> rooms;
    for (int step = 0; step < 2000; ++step) {
        const auto room = static_cast<std::int64_t>(dice() % 1000);
        if (rooms.empty() || dice() % 4 == 0) {
            rooms.push_back(room);
            tree.add(room);
        } else {
            const auto bin = dice() % rooms.size();
            rooms[bin] = room;
            tree.set(bin, room);
        }
        const auto wanted = static_cast<std::int64_t>(dice() % 1100);
        const auto found = std::ranges::find_if(rooms, [&](auto r) { return r >= wanted; });
        const auto expected = found == rooms.end()
                                  ? model::FirstFit::none
                                  : static_cast<std::size_t>(found - rooms.begin());
        REQUIRE(tree.first_with(wanted) == expected);
    }
}
