#include "engine/geometry/nearest_points.h"

#include "tests/support/random_bodies.h"

#include <catch2/catch.hpp>

#include <span>

using engine::Vector;

namespace {

// Of two convex things the points are nearest if neither thing reaches into the slab between them.
bool are_nearest(const engine::ClosePair& pair,
                 std::span<const Vector> first,
                 std::span<const Vector> second,
                 double within) {
    const Vector away = engine::unit(engine::minus(pair.on_second, pair.on_first));
    const auto all = [&](std::span<const Vector> ends, const Vector& from, double sense) {
        return std::ranges::all_of(ends, [&](const Vector& end) {
            return sense * engine::dot(away, engine::minus(end, from)) <= within;
        });
    };
    return all(first, pair.on_first, 1.0) && all(second, pair.on_second, -1.0);
}

}  // namespace

TEST_CASE("segments that cross in space are nearest between their ends", "[engine][distance]") {
    const auto pair = engine::nearest_of_segments({-1.0, 0.0, 0.0}, {3.0, 0.0, 0.0},
                                                  {0.0, -2.0, 5.0}, {0.0, 2.0, 5.0});
    CHECK(pair.squared == 25.0);
    CHECK(pair.on_first == Vector{0.0, 0.0, 0.0});
    CHECK(pair.on_second == Vector{0.0, 0.0, 5.0});
}

TEST_CASE("parallel segments are as far apart as their lines where they run beside each other",
          "[engine][distance]") {
    CHECK(engine::nearest_of_segments({0.0, 0.0, 0.0}, {4.0, 0.0, 0.0}, {3.0, 2.0, 0.0},
                                      {9.0, 2.0, 0.0})
              .squared == 4.0);
    CHECK(engine::nearest_of_segments({0.0, 0.0, 0.0}, {4.0, 0.0, 0.0}, {7.0, 4.0, 0.0},
                                      {12.0, 4.0, 0.0})
              .squared == 25.0);
}

TEST_CASE("segments that are points have a distance", "[engine][distance]") {
    CHECK(engine::nearest_of_segments({0.0, 0.0, 0.0}, {0.0, 0.0, 0.0}, {3.0, -9.0, 4.0},
                                      {3.0, 9.0, 4.0})
              .squared == 25.0);
    CHECK(engine::nearest_of_segments({0.0, 0.0, 0.0}, {0.0, 0.0, 0.0}, {0.0, 3.0, 4.0},
                                      {0.0, 3.0, 4.0})
              .squared == 25.0);
}

TEST_CASE("the nearest points of segments are proved by the slab between them",
          "[engine][distance][property]") {
    const auto seed = GENERATE(range(0U, 50U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    for (int i = 0; i < 40; ++i) {
        std::array<Vector, 2> p{};
        std::array<Vector, 2> q{};
        for (auto* ends : {&p, &q})
            for (auto& end : *ends) end = tests::random_point(dice, 500.0);
        // Nearly parallel, by all sorts of nearly.
        if (dice.chance(50)) {
            const double nearly = std::pow(10.0, tests::real_between(dice, -14.0, 2.0));
            q[1] = engine::plus(engine::plus(q[0], engine::minus(p[1], p[0])),
                                tests::random_point(dice, nearly));
        }
        const auto pair = engine::nearest_of_segments(p[0], p[1], q[0], q[1]);
        REQUIRE(are_nearest(pair, p, q, 1e-8));
    }
}

TEST_CASE("segments that cross at however small an angle are at distance 0",
          "[engine][distance][property]") {
    const auto seed = GENERATE(range(0U, 50U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    for (int i = 0; i < 20; ++i) {
        const Vector crossing = tests::random_point(dice, 100.0);
        const Vector along = engine::scaled(tests::random_direction(dice), 500.0);
        const double nearly = std::pow(10.0, tests::real_between(dice, -12.0, 0.0));
        const Vector other =
            engine::plus(along, engine::scaled(tests::random_direction(dice), 500.0 * nearly));
        const double before = tests::real_between(dice, 0.1, 0.9);
        const double other_before = tests::real_between(dice, 0.1, 0.9);
        const auto end = [&](const Vector& direction, double share) {
            return engine::plus(crossing, engine::scaled(direction, share));
        };
        const auto pair =
            engine::nearest_of_segments(end(along, -before), end(along, 1.0 - before),
                                        end(other, -other_before), end(other, 1.0 - other_before));
        REQUIRE(std::sqrt(pair.squared) <= 1e-10);
    }
}

TEST_CASE("the nearest point of a triangle is proved by the slab before it",
          "[engine][distance][property]") {
    const auto seed = GENERATE(range(0U, 50U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    for (int i = 0; i < 40; ++i) {
        engine::Triangle t;
        for (auto& corner : t) corner = tests::random_point(dice, 100.0);
        const std::array<Vector, 1> at{tests::random_point(dice, 300.0)};
        const Vector nearest = engine::nearest_in_triangle(t, at[0]);
        REQUIRE(are_nearest({at[0], nearest, 0.0}, at, t, 1e-9));
    }
}
