#include "editor/room_scene.h"

#include "model/resolve/resolve.h"

#include "tests/support/mesh_checks.h"

#include <catch2/catch.hpp>

#include <cmath>

namespace {

// What one obstacle becomes, in a project in which `height` is 10 in.
engine::SceneBatch room_with(const model::ObstacleShape& shape) {
    model::Project project;
    project.dimensions = {{.name = "height", .formula = "10 in"}};
    project.room = {{.name = "thing", .shape = shape}};
    engine::SceneBatch batch;
    editor::add_room(batch, project, model::resolve(project, {}));
    REQUIRE(batch.items.size() == 1);
    CHECK(batch.items[0].pick_id == editor::pick_of_obstacle(0));
    return batch;
}

void check_bounds(const engine::SceneBatch& batch, const engine::SceneBounds& wanted) {
    const auto& found = batch.items[0].bounds;
    for (int i = 0; i < 3; ++i) {
        CHECK(found.lo[i] == Approx(wanted.lo[i]).epsilon(0).margin(1e-3));
        CHECK(found.hi[i] == Approx(wanted.hi[i]).epsilon(0).margin(1e-3));
    }
}

}  // namespace

TEST_CASE("a box in the room stands where its formulas say", "[editor][room_scene]") {
    const auto batch = room_with(
        model::BoxObstacle{.least = {"0", "1 in", "0"}, .most = {"2 in", "3 in", "height/2"}});
    check_bounds(batch, {.lo = {0.0, 25.4, 0.0}, .hi = {50.8, 76.2, 127.0}});
    CHECK(tests::open_edges(batch.mesh) == 0);
}

TEST_CASE("a wheel well is a closed arch that leans to its inner side", "[editor][room_scene]") {
    const auto sense = GENERATE(model::Sense::plus, model::Sense::minus);
    const auto side = GENERATE(model::Axis::x, model::Axis::y);
    const auto batch = room_with(model::WheelWell{.least = {"100 mm", "200 mm", "0"},
                                                  .most = {"400 mm", "900 mm", "height"},
                                                  .top_radius = "50 mm",
                                                  .inner_side = side,
                                                  .inner_sense = sense,
                                                  .lean = "10 deg"});
    check_bounds(batch, {.lo = {100.0, 200.0, 0.0}, .hi = {400.0, 900.0, 254.0}});
    CHECK(tests::open_edges(batch.mesh) == 0);
    CHECK(tests::faulty_triangles(batch.mesh) == 0);
    const double width = side == model::Axis::x ? 300.0 : 700.0;
    const double length = side == model::Axis::x ? 700.0 : 300.0;
    const double section = 254.0 * (width - 254.0 * std::tan(10.0 * 3.14159265 / 180.0) / 2.0);
    CHECK(tests::volume(batch.mesh) < section * length);
    // Its top is rounded over at the inner side and at both ends.
    const double rounded = 50.0 * 50.0 * 0.6;
    CHECK(tests::volume(batch.mesh) > section * length - rounded * (length + 2.0 * width));
}

TEST_CASE("a wall shows its face towards the room only", "[editor][room_scene]") {
    const auto sense = GENERATE(model::Sense::plus, model::Sense::minus);
    const auto batch = room_with(
        model::WallProfile{.at = "800 mm",
                           .inside = sense,
                           .from = "0",
                           .to = "2 m",
                           .offsets = {{"1 m", "50 mm"}, {"0", "0"}, {"1.5 m", "200 mm"}}});
    const double tip = 800.0 + 200.0 * model::sign_of(sense);
    check_bounds(batch, {.lo = {std::min(800.0, tip), 0.0, 0.0},
                         .hi = {std::max(800.0, tip), 2000.0, 1500.0}});
    CHECK(batch.mesh.triangles.size() == 3 * 4);
    CHECK(tests::faulty_triangles(batch.mesh) == 0);
    for (const auto& vertex : batch.mesh.vertices)
        CHECK(static_cast<double>(vertex.normal[0]) * model::sign_of(sense) > 0.5);
}

TEST_CASE("a cylinder in the room lies along its axis", "[editor][room_scene]") {
    const auto batch = room_with(model::CylinderObstacle{.foot = {"1 m", "0", "100 mm"},
                                                         .along = model::Axis::y,
                                                         .radius = "60 mm",
                                                         .length = "500 mm"});
    check_bounds(batch, {.lo = {940.0, 0.0, 40.0}, .hi = {1060.0, 500.0, 160.0}});
    CHECK(tests::open_edges(batch.mesh) == 0);
}

TEST_CASE("a ceiling shows its lower face as far as it was measured", "[editor][room_scene]") {
    const auto batch = room_with(
        model::CeilingProfile{.at = "1900 mm",
                              .from = "0",
                              .to = "2 m",
                              .offsets = {{"0", "200 mm"}, {"800 mm", "0"}, {"1.6 m", "200 mm"}},
                              .stations = {{"1 m", {{"0", "300 mm"}, {"1.6 m", "200 mm"}}}}});
    check_bounds(batch, {.lo = {0.0, 0.0, 1600.0}, .hi = {1600.0, 2000.0, 1900.0}});
    for (const auto& vertex : batch.mesh.vertices)
        CHECK(static_cast<double>(vertex.normal[2]) < -0.5);
}

TEST_CASE("a door's swing is a closed sector", "[editor][room_scene]") {
    const auto batch = room_with(model::DoorSwing{.hinge = {"0", "0", "0"},
                                                  .width = "900 mm",
                                                  .height = "1 m",
                                                  .closed = "0",
                                                  .open = "200"});
    CHECK(tests::open_edges(batch.mesh) == 0);
    CHECK(tests::volume(batch.mesh) ==
          Approx(3.14159265 * 900.0 * 900.0 * 1000.0 * 200.0 / 360.0).epsilon(1e-3));
}

TEST_CASE("what only stays clear is dashed and nearly without a body", "[editor][room_scene]") {
    model::Project project;
    const model::BoxObstacle box{.least = {"0", "0", "0"}, .most = {"1 m", "1 m", "1 m"}};
    project.room = {{.name = "tank", .shape = box},
                    {.name = "walkway", .shape = box, .stays_clear = true}};
    engine::SceneBatch batch;
    editor::add_room(batch, project, model::resolve(project, {}));
    REQUIRE(batch.items.size() == 2);
    CHECK(batch.items[1].colour.alpha < batch.items[0].colour.alpha / 3);
    CHECK(batch.items[0].edges_end == 24);
    CHECK(batch.items[1].edges_end > 10 * 24);
}

TEST_CASE("an obstacle whose formulas fail leaves no shape", "[editor][room_scene]") {
    CHECK(room_with(model::BoxObstacle{.least = {"0", "0", "0"}, .most = {"2 in", "nowhere", "1"}})
              .mesh.vertices.empty());
    CHECK(room_with(model::BoxObstacle{.least = {"0", "0", "0"}, .most = {"2 in", "0", "1 in"}})
              .mesh.vertices.empty());
    CHECK(
        room_with(model::CylinderObstacle{.foot = {"0", "0", "0"}, .radius = "0", .length = "1 m"})
            .mesh.vertices.empty());
    CHECK(room_with(model::WheelWell{.least = {"0", "0", "0"}, .most = {"1", "2", "900 km"}})
              .mesh.vertices.empty());
    CHECK(room_with(model::ScannedObstacle{.file = "scan.ply"}).mesh.vertices.empty());
}
