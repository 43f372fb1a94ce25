#include "model/resolve/hole_layout.h"

#include <catch2/catch.hpp>

#include <array>
#include <vector>

using model::Layout;
using model::Marks;
using model::Pattern;
using model::Region;

namespace {

constexpr Marks every_ten{10, {0, 0}};

}  // namespace

TEST_CASE("two centres go in a row along the longer side", "[model][hole_layout]") {
    const Layout layout = model::best_layout(Region{{0, 0}, {100, 20}}, every_ten, 2, 40);
    CHECK(layout.pattern == Pattern::row);
    CHECK(layout.along == 0);
    CHECK(layout.count == 2);
}

TEST_CASE("a pair too close for a row goes on the diagonal", "[model][hole_layout]") {
    // Sides of 40 are below the pitch of 50, the diagonal of 56 is not.
    const Layout layout = model::best_layout(Region{{0, 0}, {40, 40}}, every_ten, 2, 50);
    CHECK(layout.pattern == Pattern::diagonal);
    CHECK(layout.count == 2);
}

TEST_CASE("one centre is left where two do not fit", "[model][hole_layout]") {
    const Layout layout = model::best_layout(Region{{0, 0}, {30, 30}}, every_ten, 2, 50);
    CHECK(layout.pattern == Pattern::row);
    CHECK(layout.count == 1);
}

TEST_CASE("a room with no mark in it takes nothing", "[model][hole_layout]") {
    CHECK(model::best_layout(Region{{1, 1}, {9, 9}}, every_ten, 2, 5).count == 0);
}

TEST_CASE("a room as thin as a line still takes centres on it", "[model][hole_layout]") {
    const Layout layout = model::best_layout(Region{{0, 20}, {100, 20}}, every_ten, 3, 50);
    CHECK(layout.count == 3);
    CHECK(layout.margin == 0);
}

TEST_CASE("six centres stand in two rows where one row is too short", "[model][hole_layout]") {
    const Layout layout = model::best_layout(Region{{0, 0}, {100, 50}}, every_ten, 6, 40);
    CHECK(layout.pattern == Pattern::two_rows);
    CHECK(layout.count == 6);
}

TEST_CASE("marks keep their phase", "[model][hole_layout]") {
    const Marks marks{10, {3, 7}};
    const Layout layout = model::best_layout(Region{{0, 0}, {14, 14}}, marks, 1, 5);
    REQUIRE(layout.count == 1);
    CHECK(layout.least[0] == 0);  // 3
    CHECK(layout.most[0] == 1);   // 13
    CHECK(layout.most[1] == 0);   // 7; 17 lies outside
}

TEST_CASE("an obstacle pushes the pattern to the larger part", "[model][hole_layout]") {
    const std::vector<Region> obstacles{{{0, 0}, {40, 100}}};
    const Layout layout =
        model::best_layout_around(Region{{0, 0}, {100, 20}}, obstacles, every_ten, 2, 50);
    CHECK(layout.count == 2);
    CHECK(layout.least[0] == 4);
}

TEST_CASE("an obstacle over the whole room leaves nothing", "[model][hole_layout]") {
    const std::vector<Region> obstacles{{{-10, -10}, {200, 200}}};
    CHECK(model::best_layout_around(Region{{0, 0}, {100, 20}}, obstacles, every_ten, 2, 50).count ==
          0);
}

TEST_CASE("centres are spread so that the least margin is greatest", "[model][hole_layout]") {
    std::array<model::Nm, 2> two{};
    model::spread(0, 30, 12, two);  // 18 spare: 6 at each end and 6 between
    CHECK(two == std::array<model::Nm, 2>{6, 24});
    std::array<model::Nm, 1> one{};
    model::spread(4, 10, 12, one);
    CHECK(one[0] == 7);
}
