#include "engine/geometry/convex_body.h"

#include "tests/support/distance_proof.h"
#include "tests/support/random_bodies.h"

#include <catch2/catch.hpp>

using engine::convex_body;
using engine::ConvexBody;
using engine::Vector;

namespace {

void check_is_whole(const ConvexBody& body) {
    // Euler: a body without holes.
    CHECK(body.corners.size() + body.faces.size() == body.edges.size() + 2);
    for (const auto& edge : body.edges) {
        CHECK(edge.faces[0] != edge.faces[1]);
        for (const auto f : edge.faces) {
            for (const auto c : edge.corners)
                CHECK(engine::height_above(body.faces[f], body.corners[c]) ==
                      Approx(0.0).margin(1e-9));
        }
    }
    for (const auto& face : body.faces) CHECK(engine::length_of(face.normal) == Approx(1.0));
    const auto& axes = body.around.axes;
    CHECK(engine::dot(engine::cross(axes[0], axes[1]), axes[2]) == Approx(1.0));
    for (const auto& corner : body.corners) {
        CHECK(tests::holds(body, corner, 1e-9));
        const auto off = engine::minus(corner, body.around.centre);
        for (std::size_t k = 0; k < 3; ++k)
            CHECK(std::abs(engine::dot(off, axes[k])) <= body.around.half[k] + 1e-9);
    }
}

}  // namespace

TEST_CASE("a box is a body of eight corners, twelve edges and six faces", "[engine][convex_body]") {
    const auto box = convex_body({-1.0, 2.0, 3.0}, {4.0, 5.0, 7.0});
    CHECK(box.corners.size() == 8);
    CHECK(box.edges.size() == 12);
    CHECK(box.faces.size() == 6);
    CHECK(box.bounds == engine::Bounds{{-1.0, 2.0, 3.0}, {4.0, 5.0, 7.0}});
    CHECK(box.is_along_axes);
    check_is_whole(box);
}

TEST_CASE("a box and the prism of its ends are the same body", "[engine][convex_body]") {
    const auto box = convex_body({0.0, 0.0, 0.0}, {300.0, 40.0, 3.0});
    const auto prism = convex_body(tests::mitred_wall({300.0, 40.0, 3.0}, {}, {}));
    CHECK(prism.corners.size() == box.corners.size());
    CHECK(prism.edges.size() == box.edges.size());
    CHECK(prism.bounds == box.bounds);
    CHECK(prism.is_along_axes);
    for (const auto& corner : box.corners) CHECK(tests::holds(prism, corner, 0.0));
}

TEST_CASE("a prism that runs out to a ridge is a wedge", "[engine][convex_body]") {
    const auto wedge = convex_body(engine::Prism{
        .near = {{0.0, 0.0, 0.0}, {0.0, 10.0, 0.0}, {0.0, 10.0, 5.0}, {0.0, 0.0, 5.0}},
        .far = {{50.0, 0.0, 0.0}, {50.0, 10.0, 0.0}, {50.0, 10.0, 0.0}, {50.0, 0.0, 0.0}}});
    CHECK(wedge.corners.size() == 6);
    CHECK(wedge.edges.size() == 9);
    CHECK(wedge.faces.size() == 5);
    check_is_whole(wedge);
}

TEST_CASE("bodies of all shapes hang together wherever they are moved, mirrored ones too",
          "[engine][convex_body][property]") {
    const auto seed = GENERATE(range(0U, 100U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto shape = tests::random_shape(dice);
    const auto place = tests::random_placement(dice, 10'000.0);
    check_is_whole(shape);
    const auto there = engine::moved(shape, place);
    check_is_whole(there);
    for (std::size_t i = 0; i < shape.corners.size(); ++i)
        CHECK(there.corners[i] == engine::point_in(place, shape.corners[i]));
    const Vector by = tests::random_point(dice, 100.0);
    check_is_whole(engine::moved(there, by));
}
