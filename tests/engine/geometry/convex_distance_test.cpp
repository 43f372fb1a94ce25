#include "engine/geometry/convex_distance.h"

#include "tests/support/distance_proof.h"
#include "tests/support/random_bodies.h"

#include <catch2/catch.hpp>

#include <string>

using engine::bring_nearer;
using engine::ClosePair;
using engine::convex_body;
using engine::ConvexBody;
using engine::Triangle;
using engine::Vector;

namespace {

const ConvexBody& unit_box() {
    static const auto box = convex_body({0.0, 0.0, 0.0}, {1.0, 1.0, 1.0});
    return box;
}

double distance_of(const ConvexBody& body, const Triangle& triangle) {
    ClosePair best{.squared = std::numeric_limits<double>::max()};
    bring_nearer(best, body, triangle);
    return std::sqrt(best.squared);
}

// Some are slivers, some have no area, some lie along a face of the body.
Triangle random_triangle(tests::Dice& dice, const ConvexBody& body) {
    const double reach = dice.chance(50) ? 30.0 : 800.0;
    const Vector about = dice.one_of(body.corners);
    Triangle t;
    for (auto& corner : t) corner = engine::plus(about, tests::random_point(dice, reach));
    const auto kind = dice.below(6);
    if (kind == 0) t[2] = engine::scaled(engine::plus(t[0], t[1]), 0.5);
    if (kind == 1) t[2] = t[1];
    if (kind == 2) t[2] = engine::plus(t[1], tests::random_point(dice, 1e-6));
    if (kind == 3) {
        const auto& face = dice.one_of(body.faces);
        const double to = tests::real_between(dice, 0.0, 2.0);
        for (auto& corner : t) {
            const double off = engine::height_above(face, corner);
            corner = engine::minus(corner, engine::scaled(face.normal, off - to));
        }
    }
    return t;
}

}  // namespace

TEST_CASE("a triangle above a face is as far as its lowest point", "[engine][distance]") {
    CHECK(distance_of(unit_box(), {{{0.5, 0.5, 3.0}, {4.0, 0.5, 9.0}, {0.5, 4.0, 9.0}}}) == 2.0);
    // Large, over all of the body.
    CHECK(distance_of(unit_box(), {{{-9.0, -9.0, 1.5}, {20.0, -9.0, 1.5}, {-9.0, 20.0, 1.5}}}) ==
          0.5);
}

TEST_CASE("a corner of a body may be nearest to the inner of a triangle", "[engine][distance]") {
    // x + y + z = 6: the corner 1, 1, 1 is 3 / sqrt 3 away.
    const double d = distance_of(unit_box(), {{{6.0, 0.0, 0.0}, {0.0, 6.0, 0.0}, {0.0, 0.0, 6.0}}});
    CHECK(d == Approx(std::sqrt(3.0)).epsilon(1e-14));
}

TEST_CASE("two edges that pass each other are nearest between their ends", "[engine][distance]") {
    const double d =
        distance_of(unit_box(), {{{3.0, -5.0, 2.0}, {3.0, 5.0, 4.0}, {9.0, 0.0, 9.0}}});
    const double proved = engine::length_of(engine::minus(Vector{3.0, 0.0, 3.0}, {1.0, 0.0, 1.0}));
    CHECK(d < proved);
    CHECK(d > 2.0);
}

TEST_CASE("what touches, crosses or lies within is at distance 0", "[engine][distance]") {
    CHECK(distance_of(unit_box(), {{{1.0, 0.5, 0.5}, {2.0, 0.5, 0.5}, {2.0, 1.0, 0.5}}}) == 0.0);
    CHECK(distance_of(unit_box(), {{{-5.0, -5.0, 0.5}, {9.0, -5.0, 0.5}, {0.0, 9.0, 0.5}}}) == 0.0);
    CHECK(distance_of(unit_box(), {{{0.4, 0.4, 0.5}, {0.6, 0.4, 0.5}, {0.5, 0.6, 0.5}}}) == 0.0);
    // Flat on a face.
    CHECK(distance_of(unit_box(), {{{0.2, 0.2, 1.0}, {0.4, 0.2, 1.0}, {0.2, 0.4, 1.0}}}) == 0.0);
}

TEST_CASE("a triangle that passes a corner does not cross", "[engine][distance]") {
    const Triangle beside{{{2.5, 0.0, 0.5}, {0.0, 2.5, 0.5}, {2.5, 2.5, 0.5}}};
    CHECK_FALSE(engine::crosses(unit_box(), beside));
    CHECK(distance_of(unit_box(), beside) == Approx(0.5 / std::sqrt(2.0)));
    const Triangle through{{{1.5, 0.0, 0.5}, {0.0, 1.5, 0.5}, {1.5, 1.5, 0.5}}};
    CHECK(engine::crosses(unit_box(), through));
}

TEST_CASE("what is no nearer than asked changes nothing", "[engine][distance]") {
    const Triangle above{{{0.5, 0.5, 3.0}, {4.0, 0.5, 9.0}, {0.5, 4.0, 9.0}}};
    ClosePair best{.squared = 4.0};
    CHECK_FALSE(bring_nearer(best, unit_box(), above));
    best.squared = 4.1;
    CHECK(bring_nearer(best, unit_box(), above));
    CHECK(best.on_first == Vector{0.5, 0.5, 1.0});
    CHECK(best.on_second == Vector{0.5, 0.5, 3.0});
}

TEST_CASE("every distance of a body from a triangle is proved by a slab between them",
          "[engine][distance][property]") {
    const auto seed = GENERATE(range(0U, 200U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto body = tests::random_body(dice, 10'000.0);
    int apart = 0;
    for (int i = 0; i < 50; ++i) {
        const auto triangle = random_triangle(dice, body);
        ClosePair best{.squared = std::numeric_limits<double>::max()};
        REQUIRE(bring_nearer(best, body, triangle));
        const double distance = std::sqrt(best.squared);
        REQUIRE(tests::is_least_distance(distance, best.on_first, best.on_second, body, triangle,
                                         1e-9));
        if (distance > 1e-9) REQUIRE_FALSE(engine::crosses(body, triangle));
        if (distance == 0.0) REQUIRE(engine::crosses(body, triangle));
        apart += distance > 1e-8;
    }
    CHECK(apart > 0);
}

TEST_CASE("two boxes side by side are as far apart as their faces", "[engine][distance]") {
    const auto a = convex_body({0.0, 0.0, 0.0}, {10.0, 10.0, 10.0});
    const auto b = convex_body({13.0, -5.0, 2.0}, {20.0, 20.0, 4.0});
    CHECK(engine::nearest(a, b).distance == 3.0);
    CHECK_FALSE(engine::nearest(a, b, 2.9));
    CHECK(engine::nearest(a, b, 3.0)->distance == 3.0);
}

TEST_CASE("bodies that touch, cross or hold each other are at distance 0", "[engine][distance]") {
    const auto a = convex_body({0.0, 0.0, 0.0}, {10.0, 10.0, 10.0});
    for (const auto& [lo, hi] : {std::pair{Vector{10.0, 2.0, 2.0}, Vector{12.0, 4.0, 4.0}},
                                 {Vector{-5.0, 4.0, 4.0}, Vector{15.0, 6.0, 6.0}},
                                 {Vector{4.0, 4.0, 4.0}, Vector{6.0, 6.0, 6.0}}}) {
        CHECK(engine::nearest(a, convex_body(lo, hi)).distance == 0.0);
        CHECK(engine::nearest(convex_body(lo, hi), a).distance == 0.0);
    }
}

TEST_CASE("every distance of two bodies is proved by a slab between them",
          "[engine][distance][property]") {
    const auto seed = GENERATE(range(0U, 300U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    for (int i = 0; i < 5; ++i) {
        const auto a = tests::random_body(dice, 600.0);
        const auto b = tests::random_body(dice, 600.0);
        const auto found = engine::nearest(a, b);
        REQUIRE(
            tests::is_least_distance(found.distance, found.on_first, found.on_second, a, b, 1e-9));
        const auto back = engine::nearest(b, a);
        REQUIRE(back.distance == Approx(found.distance).epsilon(0).margin(1e-9));
        for (const double share : {0.5, 1.0 - 1e-9, 1.0 + 1e-9, 2.0}) {
            const double cut_off = found.distance * share;
            REQUIRE(engine::nearest(a, b, cut_off).has_value() == (found.distance <= cut_off));
        }
    }
}
