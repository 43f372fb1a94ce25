#include "model/resolve/gauge_lines.h"

#include <catch2/catch.hpp>

#include <vector>

using model::Layout;
using model::LineChoice;
using model::Pattern;

namespace {

// A layout on marks of 1 nm whose two directions may lie within [least, most].
LineChoice choice(Pattern pattern,
                  std::size_t along,
                  int count,
                  std::array<model::Nm, 2> least,
                  std::array<model::Nm, 2> most,
                  model::Nm apart) {
    Layout layout;
    layout.pattern = pattern;
    layout.along = along;
    layout.count = count;
    layout.least = least;
    layout.most = most;
    layout.apart = apart;
    return {layout, {0, 0}, {true, true}};
}

}  // namespace

TEST_CASE("a free gauge takes the line that a tight one has set", "[model][gauge_lines]") {
    const std::vector<LineChoice> choices{
        choice(Pattern::row, 0, 1, {0, 0}, {40, 40}, 5),    // free: its middle would be 20
        choice(Pattern::row, 0, 1, {31, 12}, {31, 12}, 5),  // no freedom at all
    };
    const auto centres = model::place_on_lines(choices, 1);
    REQUIRE(centres[1] == model::Centres{{31, 12}});
    for (const auto coordinate : centres[0][0]) CHECK((coordinate == 31 || coordinate == 12));
}

TEST_CASE("a pair takes two lines that keep the pitch", "[model][gauge_lines]") {
    const std::vector<LineChoice> choices{
        choice(Pattern::row, 0, 2, {12, 20}, {24, 20}, 12),  // exactly 12 and 24
        choice(Pattern::row, 0, 2, {8, 20}, {30, 20}, 12),   // could be spread to 11 and 27
    };
    const auto centres = model::place_on_lines(choices, 1);
    CHECK(centres[1] == model::Centres{{12, 20}, {24, 20}});
}

TEST_CASE("lines are not shared between stocks", "[model][gauge_lines]") {
    auto other = choice(Pattern::row, 0, 1, {0, 0}, {40, 40}, 5);
    other.stock = {1, 1};
    const std::vector<LineChoice> choices{choice(Pattern::row, 0, 1, {31, 31}, {31, 31}, 5), other};
    CHECK(model::place_on_lines(choices, 2)[1] == model::Centres{{20, 20}});
}

TEST_CASE("a layout of nothing has no centres", "[model][gauge_lines]") {
    const std::vector<LineChoice> choices{LineChoice{}};
    CHECK(model::place_on_lines(choices, 1)[0].empty());
}
