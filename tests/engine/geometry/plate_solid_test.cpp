#include "engine/geometry/plate_solid.h"

#include "engine/geometry/solid_measure.h"
#include "engine/geometry/solid_mesh.h"

#include "tests/support/dice.h"
#include "tests/support/mesh_checks.h"
#include "tests/support/solid_checks.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

namespace {

using engine::PlateLoops;
using engine::RoundHole;
using engine::Solid;

constexpr double pi = std::numbers::pi;

// A gusset with its corners cut off, and a slot in it.
const PlateLoops gusset{{{0.0, 0.0}, {80.0, 0.0}, {80.0, 15.0}, {15.0, 80.0}, {0.0, 80.0}},
                        {{20.0, 20.0}, {20.0, 30.0}, {35.0, 30.0}, {35.0, 20.0}}};
const double gusset_area = 80.0 * 80.0 - 65.0 * 65.0 / 2.0 - 150.0;

Solid solid_of(const engine::PlateShape& shape) {
    Solid solid;
    REQUIRE(engine::make_plate(solid, shape));
    CHECK(tests::open_edges(solid) == 0);
    CHECK(tests::broken_loops(solid) == 0);
    engine::Mesh mesh;
    engine::SolidMesher mesher;
    REQUIRE(mesher.append(mesh, solid, {}));
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::faulty_triangles(mesh) == 0);
    return solid;
}

// Round a middle in whole millimetres, so that many corners share a row or a column.
std::vector<engine::FacePoint> random_star(tests::Dice& dice) {
    std::vector<engine::FacePoint> loop;
    const auto corners = 5 + dice.below(25);
    for (std::uint32_t i = 0; i < corners; ++i) {
        const double angle = 2.0 * pi * i / corners;
        const double reach = 60.0 + dice.below(90);
        loop.push_back({std::round(reach * std::cos(angle)), std::round(reach * std::sin(angle))});
    }
    return loop;
}

}  // namespace

TEST_CASE("a plate with a cut-out and round holes has its exact volume and surface",
          "[engine][solid]") {
    const std::vector<RoundHole> holes{{{10.0, 10.0}, 2.5}, {{60.0, 8.0}, 1.6}};
    const auto solid = solid_of({.near = gusset, .thickness = 3.0, .holes = holes});
    const double round = pi * (2.5 * 2.5 + 1.6 * 1.6);
    CHECK(solid.hole_count == 2);
    const auto measure = engine::measure_of(solid);
    CHECK(measure.volume == Approx((gusset_area - round) * 3.0).epsilon(1e-13));
    const double edges = 80.0 + 15.0 + 65.0 * std::sqrt(2.0) + 15.0 + 80.0 + 50.0;
    CHECK(measure.surface ==
          Approx(2.0 * (gusset_area - round) + 3.0 * (edges + 2.0 * pi * 4.1)).epsilon(1e-13));
}

TEST_CASE("a plate with a bevelled edge holds what lies between its two outlines",
          "[engine][solid]") {
    const PlateLoops near{{{0.0, 0.0}, {100.0, 0.0}, {100.0, 30.0}, {0.0, 30.0}}};
    const PlateLoops far{{{0.0, 0.0}, {94.0, 0.0}, {94.0, 30.0}, {0.0, 30.0}}};
    const auto solid = solid_of({.near = near, .far = &far, .thickness = 6.0, .holes = {}});
    CHECK(engine::measure_of(solid).volume == Approx(97.0 * 30.0 * 6.0).epsilon(1e-14));
    CHECK(tests::worst_gap(solid) < 1e-12);
}

TEST_CASE("a bevel that is off by a nanometre counts as the surface between its edges",
          "[engine][solid]") {
    const double off = 1e-6;
    const PlateLoops near{{{0.0, 0.0}, {100.0, 0.0}, {100.0, 30.0}, {0.0, 30.0}}};
    const PlateLoops far{{{0.0, 0.0}, {94.0, 0.0}, {94.0 + off, 30.0}, {0.0, 30.0}}};
    const auto solid = solid_of({.near = near, .far = &far, .thickness = 6.0, .holes = {}});
    // Prismatoid: ends and four times the middle (CRC Standard Mathematical Tables, from memory).
    const double far_area = 94.0 * 30.0 + off * 15.0;
    const double middle = 97.0 * 30.0 + off * 7.5;
    CHECK(engine::measure_of(solid).volume - 6.0 / 6.0 * (3000.0 + far_area + 4.0 * middle) ==
          Approx(0.0).margin(1e-10));
}

TEST_CASE("a hole over the edge of a plate or in its cut-out is left out", "[engine][solid]") {
    const std::vector<RoundHole> holes{
        {{1.0, 10.0}, 2.5}, {{25.0, 25.0}, 2.0}, {{60.0, 60.0}, 2.0}, {{10.0, 10.0}, 2.0}};
    CHECK(solid_of({.near = gusset, .thickness = 3.0, .holes = holes}).hole_count == 1);
}

TEST_CASE("loops that run the wrong way round or enclose nothing make no plate",
          "[engine][solid]") {
    Solid solid;
    const PlateLoops clockwise{{{0.0, 0.0}, {0.0, 10.0}, {10.0, 10.0}}};
    const PlateLoops line{{{0.0, 0.0}, {10.0, 0.0}, {20.0, 0.0}}};
    const PlateLoops none;
    for (const auto* loops : {&clockwise, &line, &none})
        CHECK_FALSE(engine::make_plate(solid, {.near = *loops, .thickness = 3.0, .holes = {}}));
    CHECK_FALSE(engine::make_plate(solid, {.near = gusset, .thickness = 0.0, .holes = {}}));
}

TEST_CASE("loops that cross, touch or fold back on themselves are told", "[engine][solid]") {
    CHECK(engine::is_simple(gusset));
    CHECK_FALSE(engine::is_simple({{{0.0, 0.0}, {10.0, 10.0}, {10.0, 0.0}, {0.0, 10.0}}}));
    CHECK_FALSE(engine::is_simple({{{0.0, 0.0}, {10.0, 0.0}, {10.0, 10.0}, {5.0, 0.0}}}));
    CHECK_FALSE(engine::is_simple({{{0.0, 0.0}, {10.0, 0.0}, {4.0, 0.0}, {4.0, 8.0}}}));
    CHECK_FALSE(engine::is_simple({{{0.0, 0.0}, {30.0, 0.0}, {30.0, 30.0}, {0.0, 30.0}},
                                   {{5.0, 5.0}, {5.0, 30.0}, {10.0, 5.0}}}));
}

TEST_CASE("plates of any simple outline are closed, and their meshes hold what they do",
          "[engine][solid]") {
    const auto seed = GENERATE(range(0U, 300U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    PlateLoops loops{random_star(dice)};
    // Rows of cut-outs within what every star covers.
    const auto rows = dice.below(4);
    for (std::uint32_t i = 0; i < rows; ++i) {
        const double y = -22.0 + 12.0 * i;
        const double reach = 10.0 + dice.below(15);
        loops.push_back({{-reach, y}, {-reach, y + 6.0}, {reach, y + 6.0}, {reach, y}});
    }
    if (!engine::is_simple(loops)) return;  // a star's whole millimetres may fold it
    std::vector<RoundHole> holes;
    for (int i = 0; i < 12; ++i) {
        const double x = dice.below(120) - 60.0;
        holes.push_back({{x, std::round(dice.below(24) * 5.0) - 60.0}, 1.0 + dice.below(3)});
    }
    const auto solid = solid_of({.near = loops, .thickness = 3.0, .holes = holes});
    engine::Mesh mesh;
    engine::SolidMesher mesher;
    REQUIRE(mesher.append(mesh, solid, {}));
    const double exact = engine::measure_of(solid).volume;
    CHECK(tests::volume(mesh) == Approx(exact).epsilon(0.005));
    double flat = 0.0;
    for (const auto& loop : loops) flat += engine::twice_area(loop) / 2.0;
    CHECK(exact <= flat * 3.0 * (1.0 + 1e-12));
}
