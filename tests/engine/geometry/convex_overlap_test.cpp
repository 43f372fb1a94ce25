#include "engine/geometry/convex_overlap.h"

#include "engine/geometry/convex_distance.h"

#include "tests/support/random_bodies.h"

#include <catch2/catch.hpp>

using engine::convex_body;
using engine::Vector;

TEST_CASE("a body gets out of another by the shortest way", "[engine][overlap]") {
    const auto a = convex_body({0.0, 0.0, 0.0}, {10.0, 10.0, 10.0});
    const auto b = convex_body({8.0, 2.0, 3.0}, {30.0, 7.0, 7.0});
    const auto least = engine::overlap(a, b);
    CHECK(least.depth == 2.0);
    CHECK(least.direction == Vector{-1.0, 0.0, 0.0});
    CHECK(engine::shift_to_clear(a, b, {1.0, 0.0, 0.0}) == 30.0);
    CHECK(engine::shift_to_clear(a, b, {0.0, -1.0, 0.0}) == 8.0);
}

TEST_CASE("bodies that only touch share no volume and need no shift", "[engine][overlap]") {
    const auto a = convex_body({0.0, 0.0, 0.0}, {10.0, 10.0, 10.0});
    const auto b = convex_body({10.0, 2.0, 3.0}, {30.0, 7.0, 7.0});
    CHECK(engine::overlap(a, b).depth == 0.0);
    CHECK(engine::shift_to_clear(a, b, {1.0, 0.0, 0.0}) == 0.0);
}

TEST_CASE("after the least shift bodies just touch, and before it they do not",
          "[engine][overlap][property]") {
    const auto seed = GENERATE(range(0U, 200U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto a = tests::random_body(dice, 50.0);
    const auto b = tests::random_body(dice, 50.0);
    const auto least = engine::overlap(a, b);
    if (least.depth == 0.0) {
        CHECK(engine::shift_to_clear(a, b, tests::random_direction(dice)) == 0.0);
        return;
    }
    CHECK(engine::nearest(a, b).distance == 0.0);
    for (int i = 0; i < 5; ++i) {
        const Vector way = i == 0 ? least.direction : tests::random_direction(dice);
        const double shift = engine::shift_to_clear(a, b, way);
        CHECK(shift >= least.depth - 1e-9);
        if (i == 0) CHECK(shift == Approx(least.depth).epsilon(0).margin(1e-9));
        const auto before = engine::moved(a, engine::scaled(way, shift - 1e-6));
        const auto after = engine::moved(a, engine::scaled(way, shift + 1e-6));
        CHECK(engine::overlap(before, b).depth > 0.0);
        CHECK(engine::overlap(after, b).depth == 0.0);
        CHECK(engine::nearest(after, b).distance <= 1.1e-6);
    }
}

TEST_CASE("a body that goes past another is in its way between two touches", "[engine][overlap]") {
    const auto a = convex_body({0.0, 0.0, 0.0}, {10.0, 10.0, 10.0});
    const auto b = convex_body({14.0, 2.0, 3.0}, {30.0, 7.0, 7.0});
    const auto through = engine::passage(a, b, {1.0, 0.0, 0.0});
    REQUIRE(through);
    CHECK(through->from == 4.0);
    CHECK(through->to == 30.0);
    CHECK(engine::passage(a, b, {-1.0, 0.0, 0.0})->to == -4.0);
    CHECK_FALSE(engine::passage(a, b, {0.0, 1.0, 0.0}));
    // Along its face.
    CHECK_FALSE(
        engine::passage(a, convex_body({14.0, 10.0, 3.0}, {30.0, 17.0, 7.0}), {1.0, 0.0, 0.0}));
}

TEST_CASE("a body slides along the face of another, turned anyhow", "[engine][overlap][property]") {
    const auto seed = GENERATE(range(0U, 100U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto place = tests::random_placement(dice, 3'000.0);
    const auto a = engine::moved(convex_body({0.0, 0.0, 0.0}, {10.0, 10.0, 10.0}), place);
    const auto b = engine::moved(convex_body({14.0, 10.0, 3.0}, {30.0, 17.0, 7.0}), place);
    const auto below = engine::moved(convex_body({14.0, -7.0, 3.0}, {30.0, 0.0, 7.0}), place);
    CHECK_FALSE(engine::passage(a, b, place.x));
    CHECK_FALSE(engine::passage(a, below, place.x));
    const engine::Triangle flat{engine::point_in(place, {14.0, 10.0, 3.0}),
                                engine::point_in(place, {30.0, 10.0, 3.0}),
                                engine::point_in(place, {30.0, 10.0, 7.0})};
    CHECK_FALSE(engine::passage(a, flat, place.x));
    const auto before_it = engine::moved(a, engine::scaled(place.x, 10.0));
    CHECK(engine::passage(before_it, b, place.y)->from == Approx(0.0).margin(1e-9));
}

TEST_CASE("at both ends of a passage bodies just touch", "[engine][overlap][property]") {
    const auto seed = GENERATE(range(0U, 200U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto a = tests::random_body(dice, 200.0);
    const auto b = tests::random_body(dice, 200.0);
    const auto at_a = dice.one_of(a.corners);
    const Vector way = engine::unit(engine::minus(b.around.centre, at_a));
    const auto through = engine::passage(a, b, way);
    REQUIRE(through);
    const auto moved = [&](double by) { return engine::moved(a, engine::scaled(way, by)); };
    constexpr double little = 1e-6;
    CHECK(engine::overlap(moved((through->from + through->to) / 2.0), b).depth > 0.0);
    CHECK(engine::overlap(moved(through->from - little), b).depth == 0.0);
    CHECK(engine::nearest(moved(through->from - little), b).distance <= 1.1 * little);
    CHECK(engine::overlap(moved(through->to + little), b).depth == 0.0);
    CHECK(engine::nearest(moved(through->to + little), b).distance <= 1.1 * little);
}
