#include "engine/geometry/convex_distance.h"
#include "engine/geometry/triangle_tree.h"

#include "tests/support/random_bodies.h"
#include "tests/support/triangle_soup.h"

#include <catch2/catch.hpp>

#include <algorithm>

using engine::convex_body;
using engine::ConvexBody;
using engine::TriangleTree;
using engine::Vector;

namespace {

constexpr Vector up{0.0, 0.0, 1.0};

bool crosses_any(const TriangleTree& tree,
                 const std::vector<ConvexBody>& bodies,
                 const Vector& by) {
    return std::ranges::any_of(
        bodies, [&](const ConvexBody& body) { return tree.crosses(engine::moved(body, by)); });
}

}  // namespace

TEST_CASE("bodies that stand in a floor are lifted until the last of them is out",
          "[engine][triangle_tree]") {
    const auto soup = tests::floor_of_two();
    const TriangleTree tree(soup.points, soup.triangles);
    const std::vector<ConvexBody> bodies{convex_body({60.0, 10.0, -4.0}, {80.0, 20.0, 9.0}),
                                         convex_body({20.0, 60.0, -7.0}, {30.0, 90.0, 9.0})};
    CHECK(tree.shift_to_clear(bodies, up, 100.0) == 7.0);
    CHECK(tree.shift_to_clear(bodies, {0.0, 0.0, -1.0}, 100.0) == 9.0);
    CHECK_FALSE(tree.shift_to_clear(bodies, up, 6.9));
    CHECK(tree.free_way(bodies, up, 100.0) == 0.0);
}

TEST_CASE("a body goes down as far as the floor, and along it for ever",
          "[engine][triangle_tree]") {
    const auto soup = tests::floor_of_two();
    const TriangleTree tree(soup.points, soup.triangles);
    const std::vector<ConvexBody> bodies{convex_body({60.0, 10.0, 5.0}, {80.0, 20.0, 9.0}),
                                         convex_body({20.0, 60.0, 3.0}, {30.0, 90.0, 9.0})};
    CHECK(tree.free_way(bodies, {0.0, 0.0, -1.0}, 1'000.0) == 3.0);
    CHECK(tree.free_way(bodies, up, 1'000.0) == 1'000.0);
    CHECK(tree.shift_to_clear(bodies, up, 100.0) == 0.0);
    const std::vector<ConvexBody> standing{convex_body({60.0, 10.0, 0.0}, {80.0, 20.0, 9.0})};
    CHECK(tree.free_way(standing, {1.0, 0.0, 0.0}, 1'000.0) == 1'000.0);
    CHECK(tree.shift_to_clear(standing, {1.0, 0.0, 0.0}, 100.0) == 0.0);
}

TEST_CASE("what a shift or a free way says is so just before and just after it",
          "[engine][triangle_tree][property]") {
    const auto seed = GENERATE(range(0U, 60U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto soup = tests::random_soup(dice, 1 + 10 * seed);
    const TriangleTree tree(soup.points, soup.triangles);
    constexpr double little = 1e-6;
    constexpr double most = 700.0;
    for (int i = 0; i < 10; ++i) {
        std::vector<ConvexBody> bodies;
        const auto count = 1 + dice.below(3);
        while (bodies.size() < count) bodies.push_back(tests::random_body(dice, 900.0));
        const Vector way = tests::random_direction(dice);
        const auto crosses_at = [&](double by) {
            return crosses_any(tree, bodies, engine::scaled(way, by));
        };
        const auto shift = tree.shift_to_clear(bodies, way, most);
        const double free = tree.free_way(bodies, way, most);
        if (crosses_at(0.0)) {
            REQUIRE(free == 0.0);
        } else {
            REQUIRE(shift == 0.0);
            REQUIRE_FALSE(crosses_at(free - little));
            if (free < most) REQUIRE(crosses_at(free + little));
            for (int k = 0; k < 5; ++k)
                REQUIRE_FALSE(
                    crosses_at(tests::real_between(dice, 0.0, std::max(0.0, free - little))));
        }
        if (shift && *shift > 0.0) {
            REQUIRE_FALSE(crosses_at(*shift + little));
            REQUIRE(crosses_at(*shift - little));
        }
        const double blocked = shift ? *shift - little : most;
        for (int k = 0; k < 5 && blocked > 0.0 && (!shift || *shift > 0.0); ++k)
            REQUIRE(crosses_at(tests::real_between(dice, 0.0, blocked)));
    }
}
