#include "model/resolve/resolve.h"
#include "model/room/clearance.h"

#include "tests/model/room/room_projects.h"
#include "tests/support/dice.h"
#include "tests/support/seeds.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace {

using namespace model;
using room_tests::cabinet;
using room_tests::catalogue;

std::vector<NearPlace> places_of(const Project& project,
                                 const ScanLibrary& scans = {},
                                 const LookRound& how = {}) {
    const auto resolved = resolve(project, catalogue());
    std::vector<Finding> ignored;
    return near_places(resolved, catalogue(), room_obstacles(project, resolved, scans, ignored),
                       how);
}

std::optional<NearPlace> deepest(const std::vector<NearPlace>& places) {
    const auto at = std::ranges::max_element(places, {}, &NearPlace::depth);
    if (at == places.end() || at->depth <= 0.0) return std::nullopt;
    return *at;
}

bool is_in(const std::vector<NearPlace>& places, const NearPlace& thing) {
    return std::ranges::any_of(places, [&](const NearPlace& place) {
        return place.obstacle == thing.obstacle && place.thing.piece == thing.thing.piece &&
               place.thing.fastener == thing.thing.fastener &&
               place.thing.is_tail == thing.thing.is_tail && place.depth > 0.0;
    });
}

Project moved(Project project, const engine::Vector& way, double mm) {
    const std::array<double, 3> start{10.0 * 25.4, 10.0 * 25.4, 0.0};
    for (std::size_t k = 0; k < 3; ++k)
        project.frames[0].origin[k] = std::to_string(start[k] + way[k] * mm) + " mm";
    return project;
}

// A cylinder of 300 mm radius and 1 m length along Y, over the origin.
std::shared_ptr<const Scan> scanned_cylinder() {
    constexpr std::uint32_t sides = 180;
    std::vector<engine::Vector> points;
    std::vector<engine::TriangleTree::Corners> triangles;
    for (std::uint32_t i = 0; i < sides; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / sides;
        for (const double y : {0.0, 1000.0})
            points.push_back({300.0 * std::cos(angle), y, 300.0 * std::sin(angle)});
    }
    for (const double y : {0.0, 1000.0}) points.push_back({0.0, y, 0.0});
    for (std::uint32_t i = 0; i < sides; ++i) {
        const std::uint32_t a = 2 * i;
        const std::uint32_t b = 2 * ((i + 1) % sides);
        triangles.push_back({a, a + 1, b});
        triangles.push_back({b, a + 1, b + 1});
        triangles.push_back({2 * sides, a, b});
        triangles.push_back({2 * sides + 1, b + 1, a + 1});
    }
    return std::make_shared<Scan>(
        Scan{.tree = engine::TriangleTree(points, triangles), .is_closed = true});
}

}  // namespace

TEST_CASE("moved as far as is told what stood deepest is clear, and not when moved less",
          "[model][room]") {
    std::uint32_t entered = 0;
    const auto seeds = tests::seed_count(100);
    for (std::uint32_t seed = 1; seed <= seeds; ++seed) {
        CAPTURE(seed);
        tests::Dice dice{seed};
        auto project = moved(cabinet({"0", "0", "0"}), {}, 0.0);
        const auto draw = [&](int least, int most) {
            return std::to_string(dice.between(least * 64, most * 64)) + "/64 in";
        };
        const auto x = draw(10, 46);
        const auto y = draw(10, 28);
        const auto kind = dice.below(3);
        if (kind == 0) {
            const auto high = draw(4, 12);
            project.room.push_back({.name = "well",
                                    .shape = WheelWell{.least = {x, "0", "0"},
                                                       .most = {"60 in", y, high},
                                                       .top_radius = "2 in",
                                                       .corner_radius = "1 in",
                                                       .inner_sense = Sense::minus,
                                                       .lean = "5"}});
        } else if (kind == 1) {
            project.room.push_back(
                {.name = "pipe",
                 .shape = CylinderObstacle{.foot = {x, y, "0"}, .radius = "2 in", .length = "90"}});
        } else {
            project.room.push_back({.name = "wall",
                                    .shape = WallProfile{.at = "46 in",
                                                         .inside = Sense::minus,
                                                         .from = "-20",
                                                         .to = "120",
                                                         .offsets = {{"0", "0"}, {"30 in", y}}}});
        }
        const auto worst = deepest(places_of(project));
        if (!worst) continue;
        ++entered;
        CAPTURE(worst->depth, worst->way_out[0], worst->way_out[1], worst->way_out[2]);
        CHECK_FALSE(is_in(places_of(moved(project, worst->way_out, worst->depth + 1e-4)), *worst));
        CHECK(is_in(places_of(moved(project, worst->way_out, worst->depth - 1e-3)), *worst));
    }
    CHECK(entered > seeds / 2);
}

// The triangles that a thing runs into now are not all that it meets on its way out.
TEST_CASE("the way out of a scan is as long as out of the same shape", "[model][room]") {
    auto project = cabinet({"4 in", "20 in", "5 in"}, "3 in", "3 in", "12 in");
    project.room.push_back(
        {.name = "round",
         .shape = CylinderObstacle{
             .foot = {"0", "0", "0"}, .along = Axis::y, .radius = "300 mm", .length = "1000 mm"}});
    const auto of_shape = deepest(places_of(project));
    const ScannedObstacle scan{.file = "round.stl"};
    project.room[0].shape = scan;
    const auto of_scan = deepest(places_of(project, {{scan_key(scan), scanned_cylinder()}}));
    REQUIRE(of_shape.has_value());
    REQUIRE(of_scan.has_value());
    CHECK(of_scan->way_out == of_shape->way_out);
    CHECK(std::abs(of_scan->depth - of_shape->depth) < 0.2);  // both are of flat faces
}

TEST_CASE("what is further than wanted, but within reach, is told with its place",
          "[model][room]") {
    auto project = cabinet({"10", "10", "0"});
    project.room.push_back({.name = "wall",
                            .shape = WallProfile{.at = "50 in",
                                                 .inside = Sense::minus,
                                                 .from = "-20",
                                                 .to = "120",
                                                 .offsets = {{"0", "0"}, {"30 in", "3 in"}}}});
    const auto places = places_of(project, {}, {.reach = 200.0});
    const auto nearest = std::ranges::min_element(places, {}, &NearPlace::distance);
    REQUIRE(nearest != places.end());
    const auto apart = [&](std::size_t k) {
        return nearest->on_obstacle[k] - nearest->on_thing[k];
    };
    CHECK(std::hypot(apart(0), apart(1), apart(2)) == Approx(nearest->distance));
    CHECK(nearest->on_thing[0] > 46.0 * 25.4 - 1e-6);
    // The wall leans by 3 in 30: it lies nearer than straight across.
    CHECK(nearest->distance < 25.4);
    CHECK(nearest->distance > 20.0);
}
