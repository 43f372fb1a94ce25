#include "engine/geometry/triangle_tree.h"

#include "engine/geometry/convex_distance.h"

#include "tests/support/clearance_job.h"
#include "tests/support/distance_proof.h"
#include "tests/support/random_bodies.h"
#include "tests/support/triangle_soup.h"

#include <catch2/catch.hpp>

#include <algorithm>

using engine::convex_body;
using engine::ConvexBody;
using engine::Triangle;
using engine::TriangleTree;
using engine::Vector;
using tests::floor_of_two;
using tests::random_soup;
using tests::Soup;

namespace {

double by_looking_at_all(const Soup& soup, std::span<const ConvexBody> bodies) {
    engine::ClosePair best{.squared = std::numeric_limits<double>::max()};
    for (const auto& body : bodies)
        for (std::size_t i = 0; i < soup.triangles.size(); ++i)
            engine::bring_nearer(best, body, soup.at(i));
    return std::sqrt(best.squared);
}

}  // namespace

TEST_CASE("a tree without triangles finds nothing", "[engine][triangle_tree]") {
    const TriangleTree tree;
    const auto body = convex_body({0.0, 0.0, 0.0}, {1.0, 1.0, 1.0});
    CHECK(tree.is_empty());
    CHECK_FALSE(tree.nearest(body));
    CHECK_FALSE(tree.crosses(body));
    CHECK_FALSE(tree.first_on_ray({}, {1.0, 0.0, 0.0}));
    tree.for_each_touching(body.bounds, [](auto, const auto&) { FAIL(); });
}

TEST_CASE("a box over a floor is as far as its lower face", "[engine][triangle_tree]") {
    const auto soup = floor_of_two();
    const TriangleTree tree(soup.points, soup.triangles);
    const auto body = convex_body({60.0, 10.0, 5.0}, {80.0, 20.0, 9.0});
    const auto found = tree.nearest(body);
    REQUIRE(found);
    CHECK(found->distance == 5.0);
    CHECK(found->triangle == 0);
    CHECK(found->on_body[2] == 5.0);
    CHECK(found->on_mesh[2] == 0.0);
    CHECK(tree.nearest(body, 5.0));
    CHECK_FALSE(tree.nearest(body, 4.999));
    CHECK_FALSE(tree.crosses(body));
}

TEST_CASE("a triangle wholly inside a body is crossed", "[engine][triangle_tree]") {
    const auto soup = floor_of_two();
    const TriangleTree tree(soup.points, soup.triangles);
    const auto body = convex_body({-10.0, -10.0, -10.0}, {110.0, 110.0, 10.0});
    CHECK(tree.crosses(body));
    CHECK(tree.nearest(body)->distance == 0.0);
}

TEST_CASE("a box that stands on a floor touches it", "[engine][triangle_tree]") {
    const auto soup = floor_of_two();
    const TriangleTree tree(soup.points, soup.triangles);
    const auto body = convex_body({60.0, 10.0, 0.0}, {80.0, 20.0, 9.0});
    CHECK(tree.crosses(body));
    CHECK(tree.nearest(body)->distance == 0.0);
}

TEST_CASE("what floats cannot hold is touched all the same", "[engine][triangle_tree]") {
    for (const double z : {0.1, 0.7, 1'234.567}) {
        auto soup = tests::floor_of_two();
        for (auto& point : soup.points) point[2] = z;
        const TriangleTree tree(soup.points, soup.triangles);
        CHECK(tree.crosses(convex_body({60.0, 10.0, z}, {80.0, 20.0, z + 9.0})));
        CHECK(tree.crosses(convex_body({60.0, 10.0, z - 9.0}, {80.0, 20.0, z})));
    }
}

TEST_CASE("of a group the nearest body is named", "[engine][triangle_tree]") {
    const auto soup = floor_of_two();
    const TriangleTree tree(soup.points, soup.triangles);
    const std::vector<ConvexBody> bodies{convex_body({60.0, 10.0, 7.0}, {80.0, 20.0, 9.0}),
                                         convex_body({20.0, 60.0, 6.0}, {30.0, 90.0, 9.0}),
                                         convex_body({20.0, 60.0, 8.0}, {30.0, 90.0, 9.0})};
    const auto found = tree.nearest(bodies);
    REQUIRE(found);
    CHECK(found->body == 1);
    CHECK(found->triangle == 1);
    CHECK(found->distance == 6.0);
}

TEST_CASE("a building can be stopped, and tells how far it is", "[engine][triangle_tree]") {
    tests::Dice dice{7};
    const auto soup = random_soup(dice, 3'000);
    std::vector<double> told;
    const auto whole = TriangleTree::built(soup.points, soup.triangles, [&](double done) {
        told.push_back(done);
        return true;
    });
    REQUIRE(whole);
    CHECK(told.size() > 20);
    CHECK(std::ranges::is_sorted(told));
    CHECK(told.back() == 1.0);
    CHECK_FALSE(
        TriangleTree::built(soup.points, soup.triangles, [](double done) { return done < 0.5; }));
}

TEST_CASE("points in floats give the same tree", "[engine][triangle_tree]") {
    const std::vector<std::array<float, 3>> points{
        {0.0F, 0.0F, 0.1F}, {100.0F, 0.0F, 0.1F}, {0.0F, 100.0F, 0.1F}};
    const std::vector<TriangleTree::Corners> triangles{{0, 1, 2}};
    const auto tree = TriangleTree::built(points, triangles, nullptr);
    REQUIRE(tree);
    const auto body = convex_body({10.0, 10.0, 1.0}, {20.0, 20.0, 5.0});
    CHECK(tree->nearest(body)->distance == 1.0 - static_cast<double>(0.1F));
}

TEST_CASE("a tree finds the nearest triangle of all, proved by slabs",
          "[engine][triangle_tree][property]") {
    const auto seed = GENERATE(range(0U, 40U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto soup = random_soup(dice, 1 + 20 * seed);
    const TriangleTree tree(soup.points, soup.triangles);
    CHECK(tree.triangle_count() == soup.triangles.size());
    for (int i = 0; i < 20; ++i) {
        std::vector<ConvexBody> bodies;
        const auto count = 1 + dice.below(3);
        while (bodies.size() < count) bodies.push_back(tests::random_body(dice, 1'500.0));
        const auto found = tree.nearest(bodies);
        REQUIRE(found);
        const double expected = by_looking_at_all(soup, bodies);
        REQUIRE(found->distance == Approx(expected).epsilon(0).margin(1e-9));
        REQUIRE(tests::is_least_distance(found->distance, found->on_body, found->on_mesh,
                                         bodies[found->body], soup.at(found->triangle), 1e-9));
        const double cut_off = tests::real_between(dice, 0.0, 100.0);
        REQUIRE(tree.nearest(bodies, cut_off).has_value() == (found->distance <= cut_off));
        const bool crosses =
            std::ranges::any_of(bodies, [&](const auto& body) { return tree.crosses(body); });
        REQUIRE(crosses == (found->distance == 0.0));
    }
}

TEST_CASE("of the many near triangles of a van a tree finds the nearest",
          "[engine][triangle_tree][property]") {
    const auto van = tests::van_mesh(100, 60);
    const Soup soup{van.points, van.triangles};
    const TriangleTree tree(soup.points, soup.triangles);
    for (const auto& piece : tests::random_pieces(3, 40)) {
        const auto found = tree.nearest(piece);
        REQUIRE(found);
        REQUIRE(found->distance == Approx(by_looking_at_all(soup, piece)).epsilon(0).margin(1e-9));
        REQUIRE(tests::is_least_distance(found->distance, found->on_body, found->on_mesh,
                                         piece[found->body], soup.at(found->triangle), 1e-9));
    }
}

TEST_CASE("a box visits just the triangles whose bounds it touches",
          "[engine][triangle_tree][property]") {
    const auto seed = GENERATE(range(0U, 20U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto soup = random_soup(dice, 1 + 30 * seed);
    const TriangleTree tree(soup.points, soup.triangles);
    for (int i = 0; i < 20; ++i) {
        engine::Bounds box;
        put_in(box, tests::random_point(dice, 1'000.0));
        put_in(box, tests::random_point(dice, 1'000.0));
        std::vector<std::uint32_t> expected;
        for (std::uint32_t k = 0; k < soup.triangles.size(); ++k) {
            engine::Bounds own;
            for (const auto& corner : soup.at(k)) put_in(own, corner);
            if (touches(own, box)) expected.push_back(k);
        }
        std::vector<std::uint32_t> found;
        tree.for_each_touching(box, [&](std::uint32_t number, const Triangle& corners) {
            found.push_back(number);
            CHECK(corners == soup.at(number));
        });
        std::ranges::sort(found);
        REQUIRE(found == expected);
    }
}

TEST_CASE("a ray meets the first triangle on its way, from either side",
          "[engine][triangle_tree]") {
    const auto soup = floor_of_two();
    const TriangleTree tree(soup.points, soup.triangles);
    const auto down = tree.first_on_ray({30.0, 60.0, 8.0}, {0.0, 0.0, -2.0});
    REQUIRE(down);
    CHECK(down->distance == 4.0);
    CHECK(down->triangle == 1);
    CHECK(down->point == Vector{30.0, 60.0, 0.0});
    CHECK(tree.first_on_ray({30.0, 60.0, -8.0}, {0.0, 0.0, 1.0})->distance == 8.0);
    CHECK_FALSE(tree.first_on_ray({30.0, 60.0, 8.0}, {0.0, 0.0, 1.0}));
    CHECK_FALSE(tree.first_on_ray({30.0, 60.0, 8.0}, {0.0, 0.0, -1.0}, 7.9));
    CHECK_FALSE(tree.first_on_ray({130.0, 60.0, 8.0}, {0.0, 0.0, -1.0}));
}

TEST_CASE("a ray aimed at a point of a triangle stops there or before",
          "[engine][triangle_tree][property]") {
    const auto seed = GENERATE(range(0U, 20U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto soup = random_soup(dice, 1 + 30 * seed);
    const TriangleTree tree(soup.points, soup.triangles);
    for (int i = 0; i < 20; ++i) {
        const auto t = soup.at(dice.below(static_cast<std::uint32_t>(soup.triangles.size())));
        if (engine::length_of(engine::cross(engine::minus(t[1], t[0]), engine::minus(t[2], t[0]))) <
            1.0)
            continue;
        const Vector target =
            engine::scaled(engine::plus(t[0], engine::plus(t[1], t[2])), 1.0 / 3.0);
        const Vector from = tests::random_point(dice, 3'000.0);
        const auto hit = tree.first_on_ray(from, engine::minus(target, from));
        REQUIRE(hit);
        REQUIRE(hit->distance <= 1.0 + 1e-9);
        REQUIRE(tests::holds(soup.at(hit->triangle), hit->point, 1e-6));
        // Nothing lies before it.
        const auto short_of =
            tree.first_on_ray(from, engine::minus(target, from), hit->distance * (1.0 - 1e-9));
        REQUIRE_FALSE(short_of);
    }
}
