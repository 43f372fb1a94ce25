#include "engine/render/pick.h"

#include "engine/geometry/plate_mesh.h"

#include <catch2/catch.hpp>

namespace {

using engine::PickId;
using engine::SceneBounds;
using engine::SceneData;

void add_box(engine::SceneBatch& batch, const SceneBounds& box, PickId id) {
    engine::append_box(batch.mesh, box);
    engine::close_item(batch, {.pick_id = id});
}

// Two boxes behind one another along y.
SceneData two_boxes() {
    SceneData scene;
    add_box(scene.solid, {.lo = {-50.0, 100.0, -50.0}, .hi = {50.0, 110.0, 50.0}}, 2);
    add_box(scene.solid, {.lo = {-10.0, 0.0, -10.0}, .hi = {10.0, 10.0, 10.0}}, 1);
    return scene;
}

constexpr engine::Viewport port{.width = 400, .height = 400};

engine::Camera from_front(const SceneData& scene) {
    return engine::fitted(engine::seen_from(engine::ViewFrom::front), engine::bounds_of(scene),
                          port);
}

}  // namespace

TEST_CASE("the nearest item along a ray is picked", "[engine][pick]") {
    const auto scene = two_boxes();
    const auto hit = engine::pick_along(
        scene.solid, {.origin = {0.0, -500.0, 0.0}, .direction = {0.0, 1.0, 0.0}});
    REQUIRE(hit);
    CHECK(hit->pick_id == 1);
    CHECK(hit->along == Approx(500.0));
    CHECK(hit->normal.y == Approx(-1.0));
    const auto beside = engine::pick_along(
        scene.solid, {.origin = {30.0, -500.0, 0.0}, .direction = {0.0, 1.0, 0.0}});
    REQUIRE(beside);
    CHECK(beside->pick_id == 2);
    CHECK(beside->at.y == Approx(100.0));
}

TEST_CASE("a hole is seen through", "[engine][pick]") {
    SceneData scene;
    engine::ExtrusionMesher mesher;
    const std::vector<engine::FacePoint> outline{
        {-20.0, -20.0}, {20.0, -20.0}, {20.0, 20.0}, {-20.0, 20.0}};
    engine::append_plate(scene.solid.mesh, outline, 3.0,
                         std::vector<engine::PlateHole>{{{0.0, 0.0}, 5.0}}, {}, mesher);
    engine::close_item(scene.solid, {.pick_id = 1});
    add_box(scene.solid, {.lo = {-20.0, -20.0, -30.0}, .hi = {20.0, 20.0, -20.0}}, 2);
    const auto below = [&scene](double x) {
        return engine::pick_along(scene.solid,
                                  {.origin = {x, 0.0, 100.0}, .direction = {0.0, 0.0, -1.0}});
    };
    REQUIRE(below(0.0));
    CHECK(below(0.0)->pick_id == 2);
    REQUIRE(below(10.0));
    CHECK(below(10.0)->pick_id == 1);
}

TEST_CASE("items that cannot be picked are passed over", "[engine][pick]") {
    SceneData scene;
    add_box(scene.solid, {.lo = {0.0, 0.0, 0.0}, .hi = {1.0, 1.0, 1.0}}, engine::no_pick);
    CHECK_FALSE(engine::pick_along(scene.solid,
                                   {.origin = {0.5, -5.0, 0.5}, .direction = {0.0, 1.0, 0.0}}));
}

TEST_CASE("a thin bar is picked a few pixels beside it", "[engine][pick]") {
    SceneData scene;
    add_box(scene.solid, {.lo = {-1.0, 0.0, -200.0}, .hi = {1.0, 2.0, 200.0}}, 5);
    const auto camera = from_front(scene);
    const auto middle = engine::pixel_of(camera, {0.0, 0.0, 0.0}, port);
    REQUIRE(middle);
    const glm::dvec2 beside{middle->x + 4.0, middle->y};
    CHECK(engine::pick_at(scene, camera, *middle, port, 0.0));
    CHECK(engine::pick_at(scene, camera, beside, port, 4.0));
    CHECK_FALSE(engine::pick_at(scene, camera, beside, port, 1.0));
}

TEST_CASE("a translucent item is picked only where no solid is", "[engine][pick]") {
    auto scene = two_boxes();
    add_box(scene.translucent, {.lo = {-60.0, -100.0, -60.0}, .hi = {60.0, -90.0, 60.0}}, 9);
    const auto camera = from_front(scene);
    const auto at = [&](glm::dvec3 place) {
        const auto pixel = engine::pixel_of(camera, place, port);
        REQUIRE(pixel);
        const auto hit = engine::pick_at(scene, camera, *pixel, port, 0.0);
        REQUIRE(hit);
        return hit->pick_id;
    };
    CHECK(at({0.0, 0.0, 0.0}) == 1);
    CHECK(at({55.0, 0.0, 55.0}) == 9);
}
