#include "engine/geometry/bar_solid.h"

#include "engine/geometry/solid_measure.h"
#include "engine/geometry/solid_mesh.h"

#include "tests/support/dice.h"
#include "tests/support/mesh_checks.h"
#include "tests/support/solid_checks.h"

#include <catch2/catch.hpp>

#include <numbers>

namespace {

using engine::BarNotch;
using engine::BarSection;
using engine::BarShape;
using engine::CrossHole;
using engine::FacePoint;
using engine::Solid;

constexpr double pi = std::numbers::pi;

BarSection section_of(const std::vector<FacePoint>& corners) {
    BarSection section;
    for (const auto& corner : corners) section.sides.push_back({.from = corner});
    section.loop_ends = {static_cast<std::uint32_t>(corners.size())};
    return section;
}

BarSection angle(double a, double b, double t) {
    return section_of({{0.0, 0.0}, {a, 0.0}, {a, t}, {t, t}, {t, b}, {0.0, b}});
}

// With a fillet in the root and rounded toes.
BarSection rounded_angle(double a, double b, double t, double root, double toe) {
    BarSection section;
    section.sides = {{{0.0, 0.0}},
                     {{a, 0.0}},
                     {{a, t - toe}, true, {a - toe, t - toe}},
                     {{a - toe, t}},
                     {{t + root, t}, true, {t + root, t + root}},
                     {{t, t + root}},
                     {{t, b - toe}, true, {t - toe, b - toe}},
                     {{t - toe, b}},
                     {{0.0, b}}};
    section.loop_ends = {9};
    return section;
}

BarSection channel(double a, double b, double t, double web) {
    return section_of(
        {{0.0, 0.0}, {a, 0.0}, {a, b}, {a - t, b}, {a - t, web}, {t, web}, {t, b}, {0.0, b}});
}

BarSection tube(double a, double b, double t) {
    auto section = section_of({{0.0, 0.0}, {a, 0.0}, {a, b}, {0.0, b}});
    for (const auto& p : {FacePoint{t, t}, {t, b - t}, {a - t, b - t}, {a - t, t}})
        section.sides.push_back({.from = p});
    section.loop_ends.push_back(8);
    return section;
}

// A corner's rounding leaves this share of its square.
constexpr double corner_share = 1.0 - pi / 4.0;

Solid solid_of(const BarSection& section, const BarShape& shape) {
    Solid solid;
    engine::BarSolids bars;
    REQUIRE(bars.make(solid, section, shape));
    CHECK(tests::open_edges(solid) == 0);
    CHECK(tests::broken_loops(solid) == 0);
    CHECK(tests::worst_gap(solid) < 1e-9);
    return solid;
}

double volume(const Solid& solid) { return engine::measure_of(solid).volume; }

engine::Mesh checked_mesh(const Solid& solid) {
    engine::Mesh mesh;
    engine::SolidMesher mesher;
    REQUIRE(mesher.append(mesh, solid, {}));
    CHECK(tests::open_edges(mesh) == 0);
    CHECK(tests::faulty_triangles(mesh) == 0);
    return mesh;
}

}  // namespace

TEST_CASE("a bar's volume and surface are those of its section, length and true round holes",
          "[engine][solid]") {
    const std::vector<CrossHole> holes{
        {.axis = 1, .from = 0.0, .to = 3.0, .across = 15.0, .along = 20.0, .radius = 2.45},
        {.axis = 0, .from = 3.0, .to = 0.0, .across = 18.0, .along = 60.0, .radius = 1.6}};
    const auto solid = solid_of(angle(25.0, 30.0, 3.0), {.length = 400.0, .holes = holes});
    const double area = (25.0 + 30.0 - 3.0) * 3.0;
    const double round = pi * (2.45 * 2.45 + 1.6 * 1.6);
    CHECK(solid.hole_count == 2);
    CHECK(volume(solid) == Approx(area * 400.0 - round * 3.0).epsilon(1e-13));
    const double rims = 2.0 * pi * (2.45 + 1.6) * 3.0 - 2.0 * round;
    CHECK(engine::measure_of(solid).surface ==
          Approx(2.0 * area + 110.0 * 400.0 + rims).epsilon(1e-13));
    checked_mesh(solid);
}

TEST_CASE("a bar's fillets and rounded toes count as true cylinders", "[engine][solid]") {
    const auto solid = solid_of(rounded_angle(40.0, 30.0, 4.0, 5.0, 2.0), {.length = 250.0});
    const double area = 66.0 * 4.0 + corner_share * (25.0 - 2.0 * 4.0);
    CHECK(volume(solid) == Approx(area * 250.0).epsilon(1e-13));
    CHECK(tests::volume(checked_mesh(solid)) == Approx(area * 250.0).epsilon(0.01));
}

TEST_CASE("a sloping cut takes off the section times its mean distance", "[engine][solid]") {
    // The mean over a symmetric tube is that at its middle.
    const BarShape shape{.length = 300.0,
                         .cuts = {{{.recedes = 0.0, .slope = {1.0, 0.0}},
                                   {.recedes = 0.3 * 20.0, .slope = {0.5, -0.3}}}}};
    const auto solid = solid_of(tube(30.0, 20.0, 2.0), shape);
    const double area = 30.0 * 20.0 - 26.0 * 16.0;
    const double length = 300.0 - 15.0 - (6.0 + 7.5 - 3.0);
    CHECK(volume(solid) == Approx(area * length).epsilon(1e-13));
    checked_mesh(solid);
}

TEST_CASE("sloping cuts through fillets run along ellipses", "[engine][solid]") {
    const auto section = rounded_angle(40.0, 40.0, 4.0, 5.0, 2.0);
    // Opposite slopes at both ends: what one takes, the other leaves.
    const BarShape shape{.length = 200.0,
                         .cuts = {{{.recedes = 10.0, .slope = {0.7, 0.2}},
                                   {.recedes = 50.0, .slope = {-0.7, -0.2}}}}};
    const auto solid = solid_of(section, shape);
    const double area = 76.0 * 4.0 + corner_share * (25.0 - 2.0 * 4.0);
    CHECK(volume(solid) == Approx(area * 140.0).epsilon(1e-13));
    const auto mesh = checked_mesh(solid);
    CHECK(tests::volume(mesh) == Approx(area * 140.0).epsilon(0.01));
}

TEST_CASE("a notched leg ends short beyond the root of the other one", "[engine][solid]") {
    const double root = GENERATE(0.0, 5.0);
    const auto section =
        root > 0.0 ? rounded_angle(40.0, 30.0, 4.0, root, 2.0) : angle(40.0, 30.0, 4.0);
    const std::vector<BarNotch> notches{
        {.lo = {4.0 + root, 0.0}, .hi = {40.0, 4.0}, .back = {0.0, 25.0}}};
    const std::vector<CrossHole> holes{
        {.axis = 1, .from = 0.0, .to = 4.0, .across = 20.0, .along = 165.0, .radius = 2.0},
        {.axis = 1, .from = 0.0, .to = 4.0, .across = 20.0, .along = 185.0, .radius = 2.0}};
    const auto solid = solid_of(section, {.length = 200.0, .notches = notches, .holes = holes});
    CHECK(solid.hole_count == 1);  // the other one would lie in the notch
    const double rounding = root > 0.0 ? corner_share : 0.0;
    const double area = 66.0 * 4.0 + rounding * (root * root - 2.0 * 4.0);
    const double leg = (36.0 - root) * 4.0 - rounding * 4.0;
    CHECK(volume(solid) == Approx(area * 200.0 - leg * 25.0 - pi * 16.0).epsilon(1e-13));
    checked_mesh(solid);
}

TEST_CASE("a channel's web and flanges can be notched at both ends at once", "[engine][solid]") {
    const std::vector<BarNotch> notches{{.lo = {2.0, 0.0}, .hi = {38.0, 2.0}, .back = {10.0, 12.0}},
                                        {.lo = {0.0, 2.0}, .hi = {2.0, 20.0}, .back = {5.0, 0.0}}};
    const auto solid =
        solid_of(channel(40.0, 20.0, 2.0, 2.0), {.length = 150.0, .notches = notches});
    const double area = 40.0 * 2.0 + 2.0 * 18.0 * 2.0;
    CHECK(volume(solid) ==
          Approx(area * 150.0 - 36.0 * 2.0 * 22.0 - 18.0 * 2.0 * 5.0).epsilon(1e-13));
    checked_mesh(solid);
}

TEST_CASE("a tube with a wall notched back is one solid", "[engine][solid]") {
    const std::vector<BarNotch> notches{
        {.lo = {2.0, 0.0}, .hi = {28.0, 2.0}, .back = {0.0, 15.0}},
        {.lo = {2.0, 18.0}, .hi = {28.0, 20.0}, .back = {0.0, 7.0}}};
    const auto solid = solid_of(tube(30.0, 20.0, 2.0), {.length = 100.0, .notches = notches});
    const double area = 30.0 * 20.0 - 26.0 * 16.0;
    CHECK(volume(solid) == Approx(area * 100.0 - 26.0 * 2.0 * 22.0).epsilon(1e-13));
    checked_mesh(solid);
}

TEST_CASE("cuts that leave nothing make no solid", "[engine][solid]") {
    Solid solid;
    engine::BarSolids bars;
    const auto section = angle(25.0, 25.0, 3.0);
    CHECK_FALSE(bars.make(solid, section, {.length = 0.0}));
    CHECK_FALSE(bars.make(solid, section, {.length = 20.0, .cuts = {{{}, {0.0, {1.0, 0.0}}}}}));
    CHECK(solid.faces.empty());
}

TEST_CASE("bars cut and notched at random are closed, and their meshes hold what they do",
          "[engine][solid]") {
    const auto seed = GENERATE(range(0U, 300U));
    CAPTURE(seed);
    tests::Dice dice{seed};
    const auto number = [&](int least, int most) {
        return least + static_cast<double>(dice.below(static_cast<std::uint32_t>(most - least)));
    };
    const double a = number(20, 50);
    const double b = number(20, 50);
    const bool is_tube = dice.chance(40);
    const double root = dice.chance(50) ? 3.0 : 0.0;
    const auto section = is_tube      ? tube(a, b, 2.0)
                         : root > 0.0 ? rounded_angle(a, b, 3.0, root, 1.0)
                                      : angle(a, b, 3.0);
    BarShape shape{.length = number(150, 400)};
    std::vector<BarNotch> notches;
    const double from = is_tube ? 2.0 : 3.0 + root;
    if (dice.chance(50))
        notches.push_back({.lo = {from, 0.0},
                           .hi = {is_tube ? a - 2.0 : a, is_tube ? 2.0 : 3.0},
                           .back = {number(0, 20), number(0, 20)}});
    for (std::size_t end = 0; end < 2; ++end) {
        if (dice.chance(50)) continue;
        const double one = (number(0, 200) - 100.0) / 100.0;
        const double other = dice.chance(50) ? 0.0 : (number(0, 200) - 100.0) / 100.0;
        shape.cuts[end] = {std::max(0.0, -one * a) + std::max(0.0, -other * b), {one, other}};
    }
    std::vector<CrossHole> holes;
    for (int i = 0; i < 6; ++i) {
        holes.push_back({.axis = 1,
                         .from = 0.0,
                         .to = is_tube ? 2.0 : 3.0,
                         .across = number(6, static_cast<int>(a) - 3),
                         .along = number(5, 150),
                         .radius = 1.6});
    }
    shape.notches = notches;
    shape.holes = holes;
    const auto solid = solid_of(section, shape);
    const auto mesh = checked_mesh(solid);
    const double chord = (1.0 - 24.0 / (2.0 * pi) * std::sin(2.0 * pi / 24.0)) * pi * 1.6 * 1.6;
    const double off = solid.hole_count * chord * (is_tube ? 2.0 : 3.0);
    const double rounded = root > 0.0 ? 0.01 : 0.0;
    CHECK(tests::volume(mesh) == Approx(volume(solid) + off).epsilon(1e-5 + rounded));
}
