#include "model/buying/boxes.h"

#include "tests/support/dice.h"
#include "tests/support/seeds.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <tuple>

using namespace model;

namespace {

const std::string rivet = "blind rivet 1/8, grip 4-4";

BoxPrice box(int count, std::optional<Cents> price, std::optional<int> limit = {}) {
    return {.fastener = rivet, .count = count, .price = price, .limit = limit};
}

using Tried = std::tuple<Cents, std::int64_t, std::int64_t>;  // cost, bought, boxes

// Every way there is.
void try_all(const std::vector<BoxPrice>& boxes,
             std::size_t from,
             int wanted,
             const Tried& so_far,
             Tried& best) {
    if (wanted <= 0) best = std::min(best, so_far);
    if (wanted <= 0 || from == boxes.size()) return;
    const auto& it = boxes[from];
    const int most = std::min(it.limit.value_or(wanted), (wanted + it.count - 1) / it.count);
    for (int n = 0; n <= most; ++n) {
        const auto [cost, bought, count] = so_far;
        try_all(boxes, from + 1, wanted - n * it.count,
                {cost + n * it.price.value_or(0), bought + n * it.count, count + n}, best);
    }
}

}  // namespace

TEST_CASE("the cheapest boxes are bought, not the fewest over", "[model][buying][boxes]") {
    // 230 of 25 for 3.00, 100 for 8.00, 500 for 19.00: one of 500 is 19.00, while
    // 2 x 100 + 2 x 25 is 22.00 and 3 x 100 is 24.00.
    const auto choice = boxes_for(rivet, 210, 20, {box(25, 300), box(100, 800), box(500, 1900)});
    CHECK(choice.bought == std::vector<BoxesOf>{{500, 1900, 1}});
    CHECK(choice.cost == 1900);
    CHECK(choice.over == 270);
    CHECK(choice.missing == 0);
}

TEST_CASE("at the same cost fewer are over, then there are fewer boxes", "[model][buying][boxes]") {
    CHECK(boxes_for(rivet, 90, 10, {box(100, 800), box(150, 800)}).over == 0);
    CHECK(boxes_for(rivet, 90, 10, {box(50, 400), box(100, 800)}).bought ==
          std::vector<BoxesOf>{{100, 800, 1}});
}

TEST_CASE("no more boxes are bought than can be had", "[model][buying][boxes]") {
    const auto choice = boxes_for(rivet, 300, 0, {box(100, 500, 2), box(50, 400, 1)});
    CHECK(choice.bought == std::vector<BoxesOf>{{100, 500, 2}, {50, 400, 1}});
    CHECK(choice.missing == 50);
    CHECK(choice.over == 0);
    CHECK(choice.cost == 1400);
}

TEST_CASE("boxes without a price serve only where none has one", "[model][buying][boxes]") {
    CHECK(boxes_for(rivet, 100, 0, {box(100, {}), box(50, 900)}).cost == 1800);
    const auto choice = boxes_for(rivet, 110, 0, {box(100, {}), box(50, {})});
    CHECK_FALSE(choice.cost);
    CHECK(choice.bought == std::vector<BoxesOf>{{100, {}, 1}, {50, {}, 1}});
    CHECK(choice.over == 40);
}

TEST_CASE("a fastener that nobody offers is bought in no box", "[model][buying][boxes]") {
    const auto choice = boxes_for("blind rivet 3/16, grip 6-4", 10, 1, {box(100, 800)});
    CHECK(choice.bought.empty());
    CHECK(choice.missing == 11);
    CHECK_FALSE(choice.cost);
    CHECK(box_choices({{.fastener = rivet, .needed = 3}}, nullptr)[0].missing == 3);
}

TEST_CASE("boxes cost as little as the best of all ways to buy them", "[model][buying][boxes]") {
    const auto cases = tests::seed_count(400);
    for (std::uint32_t seed = 0; seed < cases; ++seed) {
        CAPTURE(seed);
        tests::Dice dice{seed};
        std::vector<BoxPrice> boxes;
        const auto kinds = 1 + dice.below(3);
        for (std::uint32_t i = 0; i < kinds; ++i) {
            const int count = 1 + static_cast<int>(dice.below(30));
            const auto price = 1 + static_cast<Cents>(dice.below(40));
            std::optional<int> limit;
            if (dice.chance(40)) limit = static_cast<int>(dice.below(6));
            boxes.push_back(box(count, price, limit));
        }
        const int wanted = static_cast<int>(dice.below(70));
        const auto choice = boxes_for(rivet, wanted, 0, boxes);
        Tried best{std::numeric_limits<Cents>::max(), 0, 0};
        try_all(boxes, 0, wanted - choice.missing, {0, 0, 0}, best);
        if (choice.missing > 0) {
            std::int64_t most = 0;
            for (const auto& it : boxes) most += std::int64_t{it.count} * it.limit.value_or(1'000);
            CHECK(most == wanted - choice.missing);
        }
        std::int64_t count = 0;
        for (const auto& it : choice.bought) count += it.boxes;
        CHECK(Tried{choice.cost.value_or(0), wanted - choice.missing + choice.over, count} == best);
    }
}
