#include "engine/files/scan_unit.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace engine;

namespace {

std::vector<UnitGuess> guesses_for(float longest) {
    return guessed_unit({-longest / 4, 1, 1}, {longest * 3 / 4, 1.5F, 1}, {});
}

std::vector<LengthUnit> units_that_fit(float longest) {
    std::vector<LengthUnit> units;
    for (const auto& guess : guesses_for(longest))
        if (guess.fits) units.push_back(guess.unit);
    return units;
}

}  // namespace

TEST_CASE("the unit in which a van has its usual length comes first", "[scan]") {
    using enum LengthUnit;
    CHECK(units_that_fit(3.2F) == std::vector{metre});
    CHECK(units_that_fit(3200.0F) == std::vector{millimetre});
    CHECK(units_that_fit(320.0F) == std::vector{centimetre});
    CHECK(units_that_fit(126.0F) == std::vector{inch});
    CHECK(units_that_fit(10.5F) == std::vector{foot});
}

TEST_CASE("where several units fit, those that scanning programs use more come first", "[scan]") {
    using enum LengthUnit;
    CHECK(units_that_fit(180.0F) == std::vector{centimetre, inch});
    CHECK(units_that_fit(4.95F) == std::vector{metre, foot});
}

TEST_CASE("a guess says how long the longest side would be", "[scan]") {
    const auto guesses = guesses_for(3.2F);
    REQUIRE(guesses.size() == 5);
    CHECK(guesses[0].reason ==
          "the longest side would be 3.2 m, within the 1.5 m to 5 m that are expected");
    CHECK(guesses[1].unit == LengthUnit::foot);
    CHECK(guesses[1].reason ==
          "the longest side would be 0.975 m, shorter than the 1.5 m to 5 m that are expected");
}

TEST_CASE("where no unit fits, the one that misses by least comes first", "[scan]") {
    const auto guesses = guesses_for(30.0F);
    REQUIRE(guesses.size() == 5);
    CHECK_FALSE(guesses[0].fits);
    CHECK(guesses[0].unit == LengthUnit::foot);  // 9.1 m; 30 in are 0.76 m
}

TEST_CASE("what is expected may be said", "[scan]") {
    const auto guesses = guessed_unit({0, 0, 0}, {3.2F, 1, 1}, {.least_mm = 2.0, .most_mm = 4.0});
    CHECK(guesses.front().unit == LengthUnit::millimetre);
}

TEST_CASE("a box without a size gives no guess", "[scan]") {
    CHECK(guessed_unit({1, 1, 1}, {1, 1, 1}).empty());
    constexpr float infinite = std::numeric_limits<float>::infinity();
    CHECK(guessed_unit({0, 0, 0}, {infinite, 1, 1}).empty());
}
