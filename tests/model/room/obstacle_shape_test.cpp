#include "model/room/obstacle_shape.h"

#include "engine/geometry/convex_body.h"
#include "engine/geometry/vectors.h"

#include "tests/support/dice.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace {

using namespace model;

SolidObstacle shape_of(const ObstacleShape& shape) {
    const Project project;
    const Resolved resolved;
    return obstacle_shape(shape, NamedValues(project, resolved));
}

// How far a point lies outside of the nearest body, by its faces; 0 or less: within one.
double outside(const std::vector<engine::ConvexBody>& bodies, const engine::Vector& at) {
    double least = 1e9;
    for (const auto& body : bodies) {
        double most = -1e9;
        for (const auto& face : body.faces) most = std::max(most, engine::height_above(face, at));
        least = std::min(least, most);
    }
    return least;
}

std::vector<engine::ConvexBody> bodies_of(const SolidObstacle& solid) {
    std::vector<engine::ConvexBody> bodies;
    for (const auto& prism : solid.bodies) bodies.push_back(engine::convex_body(prism));
    return bodies;
}

double share(tests::Dice& dice) { return static_cast<double>(dice.between(0, 1'000'000)) / 1e6; }

const WheelWell well{.least = {"0", "400 mm", "0"},
                     .most = {"210 mm", "1190 mm", "270 mm"},
                     .top_radius = "76 mm",
                     .corner_radius = "50 mm",
                     .lean = "6"};

// Whether a point with insets from the inner side's foot and the nearer end lies in the true well,
// seen in one upright section square to a side: under the arc of the top.
bool is_under_arc(double inset, double height, double lean) {
    const double slope = std::tan(lean * std::numbers::pi / 180.0);
    if (inset < slope * height || height > 270.0 || height < 0.0) return false;
    const double turn = std::numbers::pi / 2.0 - lean * std::numbers::pi / 180.0;
    const double back = 76.0 * std::tan(turn / 2.0);
    const double centre_in = slope * 270.0 + back;
    const double centre_up = 270.0 - 76.0;
    const double touch_up = 270.0 - back * std::cos(lean * std::numbers::pi / 180.0);
    if (inset >= centre_in || height <= touch_up) return true;
    return std::hypot(inset - centre_in, height - centre_up) <= 76.0;
}

}  // namespace

TEST_CASE("a wheel well's bodies hold all of it and little more", "[model][room]") {
    const auto solid = shape_of(well);
    REQUIRE(solid.fault.empty());
    const auto bodies = bodies_of(solid);
    tests::Dice dice{7};
    int in = 0;
    int out = 0;
    for (int i = 0; i < 20'000; ++i) {
        const double x = 1.1 * 210.0 * share(dice);
        const double z = 1.1 * 270.0 * share(dice);
        // Half-way along, where neither end nor corner counts.
        const bool is_in = is_under_arc(210.0 - x, z, 6.0);
        const double off = outside(bodies, {x, 795.0, z});
        CAPTURE(x, z, off);
        if (is_in) CHECK(off < 1e-6);
        // Beyond the tolerance nothing is taken for the well that is not.
        const bool is_far_out =
            !is_under_arc(210.0 - x + round_tolerance_mm, z - round_tolerance_mm, 6.0) &&
            !is_under_arc(210.0 - x + round_tolerance_mm, z, 6.0);
        if (is_far_out) CHECK(off > -1e-6);
        ++(is_in ? in : out);
    }
    CHECK(in > 5'000);
    CHECK(out > 1'000);
}

TEST_CASE("a wheel well is rounded at both its corners and both its ends", "[model][room]") {
    const auto bodies = bodies_of(shape_of(well));
    CHECK(outside(bodies, {209.8, 795.0, 1.0}) < 0.0);
    CHECK(outside(bodies, {209.0, 401.0, 1.0}) > 10.0);  // 50 mm corner cuts some 20 mm away
    CHECK(outside(bodies, {209.0, 1189.0, 1.0}) > 10.0);
    CHECK(outside(bodies, {1.0, 401.0, 1.0}) < 0.0);    // not beside the wall
    CHECK(outside(bodies, {1.0, 401.0, 269.0}) > 2.0);  // but over each end
    CHECK(outside(bodies, {1.0, 795.0, 269.0}) < 0.0);  // and not along the wall
}

TEST_CASE("a wall's surface lies where it was measured and straight between", "[model][room]") {
    const WallProfile wall{.at = "1000 mm",
                           .inside = Sense::minus,
                           .from = "0",
                           .to = "2000 mm",
                           .offsets = {{"0", "0"}, {"800 mm", "20 mm"}, {"1400 mm", "120 mm"}},
                           .stations = {{"1000 mm", {{"0", "10 mm"}, {"1400 mm", "150 mm"}}}}};
    const auto solid = shape_of(wall);
    REQUIRE(solid.fault.empty());
    const auto bodies = bodies_of(solid);
    const auto surface = [&](double y, double z) {
        double out = 0.0;
        double in = 900.0;
        while (in - out > 1e-7) {
            const double middle = (in + out) / 2.0;
            (outside(bodies, {1000.0 - middle, y, z}) > 0.0 ? in : out) = middle;
        }
        return out;
    };
    CHECK(surface(0.0, 400.0) == Approx(10.0).epsilon(0).margin(1e-5));
    CHECK(surface(0.0, 1100.0) == Approx(70.0).epsilon(0).margin(1e-5));
    CHECK(surface(1000.0, 700.0) == Approx(80.0).epsilon(0).margin(1e-5));
    CHECK(surface(1500.0, 700.0) ==
          Approx(80.0).epsilon(0).margin(1e-5));  // goes on past the last station
    CHECK(surface(0.0, 1700.0) == Approx(120.0).epsilon(0).margin(1e-5));  // and upright above
    // Between two stations it never stands back from the straight line between them.
    CHECK(surface(500.0, 0.0) == Approx(5.0).epsilon(0).margin(1e-5));
    CHECK(surface(500.0, 1400.0) == Approx(135.0).epsilon(0).margin(1e-5));
    CHECK(surface(500.0, 400.0) >= (10.0 + (10.0 + 140.0 * 400.0 / 1400.0)) / 2.0 - 1e-5);
}

TEST_CASE("two offsets of a wall at one height are a step there", "[model][room]") {
    const WallProfile wall{
        .at = "0",
        .from = "0",
        .to = "1000 mm",
        .offsets = {{"0", "0"}, {"700 mm", "0"}, {"700 mm", "100 mm"}, {"1500 mm", "140 mm"}},
        .stations = {{"600 mm", {{"0", "0"}, {"1500 mm", "0"}}}}};
    const auto bodies = bodies_of(shape_of(wall));
    CHECK(outside(bodies, {1.0, 1.0, 699.0}) > 0.5);
    CHECK(outside(bodies, {99.0, 1.0, 701.0}) < 0.0);
    CHECK(outside(bodies, {119.0, 1.0, 1100.0}) < 0.0);
    CHECK(outside(bodies, {121.0, 1.0, 1100.0}) > 0.5);
    // It dies out towards the section that has none.
    CHECK(outside(bodies, {40.0, 300.0, 699.0}) > 0.5);
    CHECK(outside(bodies, {49.0, 300.0, 701.0}) < 0.0);
    CHECK(outside(bodies, {1.0, 700.0, 701.0}) > 0.5);
}

TEST_CASE("two drops of a ceiling at one place are a step there", "[model][room]") {
    const CeilingProfile ceiling{
        .at = "1500 mm",
        .from = "0",
        .to = "1000 mm",
        .offsets = {{"0", "0"}, {"500 mm", "0"}, {"500 mm", "250 mm"}, {"1500 mm", "250 mm"}}};
    const auto bodies = bodies_of(shape_of(ceiling));
    CHECK(outside(bodies, {499.0, 100.0, 1499.0}) > 0.5);
    CHECK(outside(bodies, {501.0, 100.0, 1251.0}) < 0.0);
    CHECK(outside(bodies, {1000.0, 100.0, 1251.0}) < 0.0);
}

TEST_CASE("a ceiling comes down by its drops and goes on level beyond them", "[model][room]") {
    const CeilingProfile ceiling{.at = "1900 mm",
                                 .from = "0",
                                 .to = "3000 mm",
                                 .offsets = {{"0", "200 mm"}, {"300 mm", "0"}}};
    const auto bodies = bodies_of(shape_of(ceiling));
    CHECK(outside(bodies, {0.0, 100.0, 1699.9}) > 0.0);
    CHECK(outside(bodies, {-1.0, 100.0, 1700.1}) < 0.0);
    CHECK(outside(bodies, {150.0, 100.0, 1800.1}) < 0.0);
    CHECK(outside(bodies, {150.0, 100.0, 1799.8}) > 0.0);
    CHECK(outside(bodies, {-400.0, 100.0, 1700.1}) < 0.0);
    CHECK(outside(bodies, {700.0, 100.0, 1899.9}) > 0.0);
}

TEST_CASE("a wheel well with very large corners is held by faces that stand out a little more",
          "[model][room]") {
    constexpr double radius = 2540.0;
    const WheelWell wide{.least = {"0", "0", "0"},
                         .most = {"3000 mm", "7000 mm", "300 mm"},
                         .corner_radius = "2540 mm"};
    const auto bodies = bodies_of(shape_of(wide));
    REQUIRE(bodies.size() == 1);
    const std::array<double, 2> centre{3000.0 - radius, radius};
    for (int degrees = 270; degrees <= 360; ++degrees) {
        const double angle = degrees * std::numbers::pi / 180.0;
        const auto at = [&](double out) {
            return engine::Vector{centre[0] + out * std::cos(angle),
                                  centre[1] + out * std::sin(angle), 10.0};
        };
        CHECK(outside(bodies, at(radius - 1e-6)) < 0.0);
        CHECK(outside(bodies, at(radius * (1.0 + 1.0 / 2900.0))) > 0.0);
    }
}

TEST_CASE("a door sweeps the sector between closed and open", "[model][room]") {
    const DoorSwing door{.hinge = {"0", "0", "100 mm"},
                         .width = "800 mm",
                         .height = "1000 mm",
                         .closed = "90",
                         .open = "-80"};
    const auto bodies = bodies_of(shape_of(door));
    tests::Dice dice{11};
    for (int i = 0; i < 5'000; ++i) {
        const double x = 2000.0 * share(dice) - 1000.0;
        const double y = 2000.0 * share(dice) - 1000.0;
        const double angle = std::atan2(y, x) * 180.0 / std::numbers::pi;
        const bool swept = std::hypot(x, y) <= 800.0 && angle <= 90.0 && angle >= -80.0;
        const double off = outside(bodies, {x, y, 600.0});
        CAPTURE(x, y, off);
        if (swept) CHECK(off < 1e-6);
        if (std::hypot(x, y) > 800.0 + round_tolerance_mm || angle > 90.01 || angle < -80.01)
            CHECK(off > -1e-6);
    }
    CHECK(outside(bodies, {400.0, 0.0, 99.0}) > 0.0);
    CHECK(outside(bodies, {400.0, 0.0, 1101.0}) > 0.0);
}

TEST_CASE("a cylinder is held by flat faces that touch it", "[model][room]") {
    const CylinderObstacle tank{
        .foot = {"0", "0", "0"}, .along = Axis::y, .radius = "150 mm", .length = "500 mm"};
    const auto bodies = bodies_of(shape_of(tank));
    REQUIRE(bodies.size() == 1);
    for (const auto& face : bodies[0].faces) {
        if (std::abs(face.normal[1]) > 0.5) continue;
        CHECK(face.height == Approx(150.0).epsilon(0).margin(1e-6));
    }
    for (const auto& corner : bodies[0].corners)
        CHECK(std::hypot(corner[0], corner[2]) < 150.0 + round_tolerance_mm);
}

TEST_CASE("what cannot be a shape says why", "[model][room]") {
    const auto fault = [](const ObstacleShape& shape) { return shape_of(shape).fault; };
    CHECK(fault(BoxObstacle{{"0", "0", "5"}, {"1", "1", "4"}}).find("along Z") !=
          std::string::npos);
    auto bad = well;
    bad.top_radius = "300 mm";
    CHECK_FALSE(fault(bad).empty());
    bad = well;
    bad.lean = "70";
    CHECK_FALSE(fault(bad).empty());
    bad = well;
    bad.inner_side = Axis::z;
    CHECK_FALSE(fault(bad).empty());
    bad = well;
    bad.corner_radius = "-1 mm";
    CHECK_FALSE(fault(bad).empty());
    CHECK_FALSE(fault(CylinderObstacle{{"0", "0", "0"}, Axis::z, "0", "1"}).empty());
    CHECK_FALSE(fault(WallProfile{.at = "0", .from = "0", .to = "1"}).empty());
    CHECK_FALSE(
        fault(
            DoorSwing{
                .hinge = {"0", "0", "0"}, .width = "1", .height = "1", .closed = "5", .open = "5"})
            .empty());
    CHECK_FALSE(fault(DoorSwing{.hinge = {"0", "0", "0"},
                                .width = "30",
                                .height = "30",
                                .closed = "0",
                                .open = "0.000000001"})
                    .empty());
    CHECK(fault(WallProfile{.at = "0",
                            .from = "0",
                            .to = "1",
                            .offsets = {{"5", "0"}, {"5", "2"}, {"5", "1"}}})
              .find("two make a step") != std::string::npos);
    // A formula that fails has a finding of its own.
    CHECK(fault(BoxObstacle{{"nothing", "0", "5"}, {"1", "1", "4"}}).empty());
}
