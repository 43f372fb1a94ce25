#include "model/resolve/spaced_row.h"

#include <catch2/catch.hpp>

using model::RowRoom;
using model::spaced_row;
using Row = std::vector<engine::Nm>;

TEST_CASE("a row begins and ends as far out as may be, evenly between",
          "[model][resolve][panels]") {
    CHECK(spaced_row({.least = 10, .most = 110, .apart = 5, .pitch = 30}) ==
          Row{10, 35, 60, 85, 110});
}

TEST_CASE("all of a row lies on marks", "[model][resolve][panels]") {
    const auto row =
        spaced_row({.least = 10, .most = 100, .step = 8, .phase = 3, .apart = 5, .pitch = 40});
    REQUIRE(row.size() > 2);
    for (const auto centre : row) CHECK((centre - 3) % 8 == 0);
    CHECK(model::greatest_gap(row) <= 40);
}

TEST_CASE("a centre that is in the way moves along the row", "[model][resolve][panels]") {
    const auto row =
        spaced_row({.least = 0, .most = 100, .apart = 5, .pitch = 60, .blocked = {{45, 53}}});
    CHECK(row == Row{0, 53, 100});
}

TEST_CASE("where more is blocked than the pitch the row steps over it",
          "[model][resolve][panels]") {
    const auto row =
        spaced_row({.least = 0, .most = 100, .apart = 5, .pitch = 20, .blocked = {{30, 80}}});
    CHECK(model::greatest_gap(row) == 50);
    CHECK(row.front() == 0);
    CHECK(row.back() == 100);
}

TEST_CASE("a row with room for one has one, and without room none", "[model][resolve][panels]") {
    CHECK(spaced_row({.least = 0, .most = 4, .apart = 5, .pitch = 20}) == Row{2});
    CHECK(spaced_row({.least = 4, .most = 0, .apart = 5, .pitch = 20}).empty());
}
