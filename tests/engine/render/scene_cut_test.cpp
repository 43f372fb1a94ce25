#include "engine/render/scene_cut.h"

#include "engine/geometry/plate_mesh.h"
#include "engine/render/offscreen.h"
#include "engine/render/pick.h"
#include "engine/render/renderer.h"

#include <catch2/catch.hpp>
#include <glm/geometric.hpp>

#include <array>
#include <cstdlib>
#include <numbers>

namespace {

using engine::Colour;
using engine::SceneBounds;

constexpr engine::CutLook plain{.tint = {255, 0, 0}, .share = 1.0, .line = {0, 0, 0}};

void add_box(engine::SceneBatch& batch, const SceneBounds& box, engine::PickId id) {
    engine::append_box(batch.mesh, box);
    engine::close_item(batch, {.pick_id = id, .colour = {200, 200, 200}, .line = {60, 60, 60}});
}

double area_of(const engine::SceneBatch& batch) {
    double area = 0.0;
    const auto corner = [&](std::size_t i) {
        const auto& at = batch.mesh.vertices[batch.mesh.triangles[i]].position;
        return glm::dvec3{static_cast<double>(at[0]), static_cast<double>(at[1]),
                          static_cast<double>(at[2])};
    };
    for (std::size_t i = 0; i + 2 < batch.mesh.triangles.size(); i += 3) {
        area += glm::length(glm::cross(corner(i + 1) - corner(i), corner(i + 2) - corner(i))) / 2;
    }
    return area;
}

engine::SceneCut cut_at(const engine::SceneBatch& batch, glm::dvec3 normal, double offset) {
    engine::SceneCut cut{.normal = normal, .offset = offset, .faces = {}};
    engine::append_cut_faces(cut, batch, plain, true);
    return cut;
}

}  // namespace

TEST_CASE("a box is cut in a face of its own size, from either side", "[engine][cut]") {
    engine::SceneBatch batch;
    add_box(batch, {.lo = {0, 0, 0}, .hi = {30, 20, 10}}, 7);
    const auto axis = GENERATE(0, 1, 2);
    const auto sense = GENERATE(1.0, -1.0);
    glm::dvec3 normal{0.0};
    normal[axis] = sense;
    const auto cut = cut_at(batch, normal, sense * 4.0);
    REQUIRE(cut.faces.items.size() == 1);
    CHECK(cut.faces.items[0].pick_id == 7);
    CHECK(cut.faces.items[0].colour == Colour{255, 0, 0});
    CHECK(area_of(cut.faces) ==
          Approx(std::array{200.0, 300.0, 600.0}[static_cast<std::size_t>(axis)]));
    CHECK(cut.faces.items[0].bounds.lo[axis] == Approx(4.0));
    CHECK(cut.faces.items[0].bounds.hi[axis] == Approx(4.0));
}

TEST_CASE("a plane beside a box cuts nothing, and one in its face no more than that face",
          "[engine][cut]") {
    engine::SceneBatch batch;
    add_box(batch, {.lo = {0, 0, 0}, .hi = {30, 20, 10}}, 7);
    CHECK(cut_at(batch, {0, 0, 1}, 10.5).faces.items.empty());
    CHECK(cut_at(batch, {0, 0, 1}, -0.5).faces.items.empty());
    CHECK(cut_at(batch, {0, 0, 1}, 0.0).faces.items.empty());
    CHECK(area_of(cut_at(batch, {0, 0, 1}, 10.0).faces) == Approx(600.0));
}

TEST_CASE("a cut through a hole leaves the hole open", "[engine][cut]") {
    engine::SceneBatch batch;
    engine::ExtrusionMesher mesher;
    const std::vector<engine::FacePoint> outline{
        {-20.0, -20.0}, {20.0, -20.0}, {20.0, 20.0}, {-20.0, 20.0}};
    REQUIRE(engine::append_plate(batch.mesh, outline, 3.0,
                                 std::vector<engine::PlateHole>{{{0.0, 0.0}, 5.0}}, {},
                                 mesher) == 1);
    engine::close_item(batch, {.pick_id = 1});
    CHECK(area_of(cut_at(batch, {0, 0, 1}, 1.5).faces) ==
          Approx(1600.0 - 25.0 * std::numbers::pi).epsilon(0.005));
    CHECK(area_of(cut_at(batch, {1, 0, 0}, 0.0).faces) ==
          Approx(3.0 * (40.0 - 10.0)).epsilon(0.01));
    CHECK(area_of(cut_at(batch, {1, 0, 0}, 12.0).faces) == Approx(3.0 * 40.0));
}

TEST_CASE("an outline within another one is left open", "[engine][cut]") {
    // Anticlockwise 10 x 10, and clockwise 4 x 4 in its middle.
    const std::vector<engine::CutLine> outline{
        {{0, 0}, {10, 0}}, {{10, 0}, {10, 10}}, {{10, 10}, {0, 10}}, {{0, 10}, {0, 0}},
        {{3, 3}, {3, 7}},  {{3, 7}, {7, 7}},    {{7, 7}, {7, 3}},    {{7, 3}, {3, 3}}};
    double area = 0.0;
    for (const auto& it : engine::filled(outline)) {
        area +=
            (it.high - it.low) * (it.low_right - it.low_left + it.high_right - it.high_left) / 2.0;
    }
    CHECK(area == Approx(100.0 - 16.0));
}

TEST_CASE("what lies before a cut is not picked, and a cut face is picked as what is cut",
          "[engine][cut]") {
    engine::SceneData scene;
    add_box(scene.solid, {.lo = {-10, 0, -10}, .hi = {10, 10, 10}}, 1);
    add_box(scene.solid, {.lo = {-50, 100, -50}, .hi = {50, 110, 50}}, 2);
    add_box(scene.translucent, {.lo = {-90, 50, -90}, .hi = {-60, 60, 90}}, 3);
    const auto camera = engine::fitted(engine::seen_from(engine::ViewFrom::front),
                                       engine::bounds_of(scene), {400, 400});
    const glm::dvec2 middle = *engine::pixel_of(camera, {0, 0, 0}, {400, 400});
    REQUIRE(engine::pick_at(scene, camera, middle, {400, 400})->pick_id == 1);
    // Looked at along +y: what is below 30 is taken away.
    auto cut = std::make_shared<engine::SceneCut>(cut_at(scene.solid, {0, -1, 0}, -30.0));
    scene.cut = cut;
    CHECK(engine::pick_at(scene, camera, middle, {400, 400})->pick_id == 2);
    scene.cut = std::make_shared<engine::SceneCut>(cut_at(scene.solid, {0, -1, 0}, -5.0));
    const auto hit = engine::pick_at(scene, camera, middle, {400, 400});
    REQUIRE(hit);
    CHECK(hit->pick_id == 1);
    CHECK(hit->at.y == Approx(5.0));
    const glm::dvec2 beside = *engine::pixel_of(camera, {-75, 50, 0}, {400, 400});
    CHECK(engine::pick_at(scene, camera, beside, {400, 400}, 0.0)->pick_id == 3);
    scene.cut = std::make_shared<engine::SceneCut>(cut_at(scene.solid, {0, -1, 0}, -70.0));
    CHECK_FALSE(engine::pick_at(scene, camera, beside, {400, 400}, 0.0));
}

TEST_CASE("a cut is drawn: what lies before it is gone and its faces are filled",
          "[engine][cut][renderer]") {
    unsetenv("DISPLAY");
    const auto context = engine::OffscreenContext::create();
    REQUIRE(context);
    engine::Renderer renderer;
    REQUIRE_FALSE(renderer.fault());
    engine::SceneData scene;
    scene.revision = 1;
    add_box(scene.solid, {.lo = {0, 0, 0}, .hi = {100, 100, 100}}, 1);
    add_box(scene.solid, {.lo = {0, 300, 0}, .hi = {100, 310, 100}}, 2);
    constexpr engine::Viewport port{.width = 120, .height = 120};
    const auto camera =
        engine::fitted(engine::seen_from(engine::ViewFrom::front), engine::bounds_of(scene), port);
    const auto middle = [&] {
        renderer.draw(scene, {}, camera, port);
        const auto image = renderer.read_back();
        const std::size_t at = 4 * (60U * 120U + 60U);
        return Colour{image.rgba[at], image.rgba[at + 1], image.rgba[at + 2], 255};
    };
    const auto whole = middle();
    CHECK(whole.red == whole.green);
    scene.cut = std::make_shared<engine::SceneCut>(cut_at(scene.solid, {0, -1, 0}, -50.0));
    const auto face = middle();
    CHECK(face.red > 150);
    CHECK(face.green < 90);
    const auto pictures = renderer.pictures_drawn();
    static_cast<void>(middle());
    CHECK(renderer.pictures_drawn() == pictures);
    scene.cut = std::make_shared<engine::SceneCut>(cut_at(scene.solid, {0, -1, 0}, -200.0));
    const auto behind = middle();
    CHECK(behind.red - behind.blue <=
          3);                       // grey, with three tenths of the paper's tint at most ...
    CHECK(behind.red > whole.red);  // ... in the haze: the box further away
    scene.cut = std::make_shared<engine::SceneCut>(cut_at(scene.solid, {0, -1, 0}, -400.0));
    CHECK(middle() == Colour{0xF4, 0xF1, 0xEA});
    scene.cut.reset();
    CHECK(middle() == whole);
}

TEST_CASE("a line drawing has faces of paper, lines of ink and no ground",
          "[engine][cut][renderer]") {
    unsetenv("DISPLAY");
    const auto context = engine::OffscreenContext::create();
    REQUIRE(context);
    engine::Renderer renderer;
    engine::SceneData scene;
    scene.revision = 1;
    add_box(scene.solid, {.lo = {0, 0, 0}, .hi = {300, 200, 100}}, 1);
    scene.ground = engine::ground_below(engine::bounds_of(scene), false);
    engine::SceneStyle style;
    style.is_line_drawing = true;
    style.paper = {255, 255, 255};
    constexpr engine::Viewport port{.width = 160, .height = 120};
    const auto camera =
        engine::fitted(engine::seen_from(engine::ViewFrom::corner), engine::bounds_of(scene), port);
    constexpr int no_smoothing = 0;
    renderer.draw(scene, {}, camera, port, style, no_smoothing);
    const auto image = renderer.read_back();
    int between = 0;
    int dark = 0;
    int white = 0;
    for (std::size_t i = 0; i < image.rgba.size(); i += 4) {
        const int red = image.rgba[i];
        CHECK(image.rgba[i + 1] == red);
        white += red == 255 ? 1 : 0;
        dark += red < 60 ? 1 : 0;
        between += red >= 60 && red < 255 ? 1 : 0;
    }
    CHECK(dark > 100);
    CHECK(between == 0);
    CHECK(white > 160 * 120 * 3 / 4);
}
