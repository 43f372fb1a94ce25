#include "engine/render/renderer.h"

#include "engine/render/offscreen.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <numbers>
#include <optional>
#include <set>

namespace {

using engine::Colour;
using engine::Image;

constexpr engine::Viewport port{.width = 160, .height = 120};

engine::SceneData one_box() {
    engine::SceneData scene;
    scene.revision = 1;
    engine::append_box(scene.solid.mesh, {.lo = {0.0, 0.0, 0.0}, .hi = {300.0, 200.0, 100.0}});
    engine::close_item(scene.solid,
                       {.pick_id = 3, .colour = {200, 205, 210}, .line = {60, 60, 60}});
    scene.ground = engine::ground_below(engine::bounds_of(scene), false);
    return scene;
}

engine::Camera from_corner(const engine::SceneData& scene) {
    return engine::fitted(engine::seen_from(engine::ViewFrom::corner), engine::bounds_of(scene),
                          port);
}

Colour pixel(const Image& image, int x, int y) {
    const auto at = 4 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(image.width) +
                         static_cast<std::size_t>(x));
    return {image.rgba[at], image.rgba[at + 1], image.rgba[at + 2], image.rgba[at + 3]};
}

// Bluer than grey metal or warm paper ever is.
bool is_blue(Colour colour) { return colour.blue > colour.red + 30; }

}  // namespace

TEST_CASE("a scene is drawn without any display", "[engine][renderer]") {
    unsetenv("DISPLAY");
    const auto context = engine::OffscreenContext::create();
    REQUIRE(context);
    engine::Renderer renderer;
    REQUIRE_FALSE(renderer.fault());
    const auto scene = one_box();
    const auto camera = from_corner(scene);

    SECTION("the paper shows at the rim and the box in the middle") {
        renderer.draw(scene, {}, camera, port);
        const auto image = renderer.read_back();
        REQUIRE(image.width == port.width);
        REQUIRE(image.height == port.height);
        CHECK(pixel(image, 0, 0) == Colour{0xF4, 0xF1, 0xEA});
        CHECK(pixel(image, 80, 60) != Colour{0xF4, 0xF1, 0xEA});
        std::set<std::uint8_t> tones;
        for (std::size_t i = 0; i < image.rgba.size(); i += 4) tones.insert(image.rgba[i]);
        CHECK(tones.size() > 10);
    }
    SECTION("two pictures of one scene are the same, byte for byte") {
        renderer.draw(scene, {}, camera, port);
        const auto first = engine::png_bytes(renderer.read_back());
        engine::Renderer another;
        another.draw(scene, {}, camera, port);
        CHECK(first == engine::png_bytes(another.read_back()));
    }
    SECTION("nothing is drawn again while nothing changes") {
        for (int i = 0; i < 5; ++i) renderer.draw(scene, {}, camera, port);
        CHECK(renderer.pictures_drawn() == 1);
        renderer.draw(scene, {}, engine::orbited(camera, 0.1, 0.0), port);
        CHECK(renderer.pictures_drawn() == 2);
        renderer.draw(scene, {.hovered = 3}, engine::orbited(camera, 0.1, 0.0), port);
        CHECK(renderer.pictures_drawn() == 3);
        renderer.draw(scene, {.hovered = 3}, engine::orbited(camera, 0.1, 0.0), {80, 60});
        CHECK(renderer.pictures_drawn() == 4);
        CHECK(renderer.read_back().width == 80);
    }
    SECTION("what is selected turns blue") {
        renderer.draw(scene, {}, camera, port);
        CHECK_FALSE(is_blue(pixel(renderer.read_back(), 80, 60)));
        renderer.draw(scene, {.selected = {3}}, camera, port);
        CHECK(is_blue(pixel(renderer.read_back(), 80, 60)));
    }
    SECTION("a scene of another revision takes the old one's place") {
        renderer.draw(scene, {}, camera, port);
        engine::SceneData empty;
        empty.revision = 2;
        renderer.draw(empty, {}, camera, port);
        CHECK(pixel(renderer.read_back(), 80, 60) == Colour{0xF4, 0xF1, 0xEA});
    }
    SECTION("it can be drawn without smoothing") {
        renderer.draw(scene, {}, camera, port, {}, 0);
        CHECK(pixel(renderer.read_back(), 80, 60) != Colour{0xF4, 0xF1, 0xEA});
    }
    SECTION("what is selected shows through what lies before it") {
        auto hidden = scene;
        engine::append_box(hidden.solid.mesh,
                           {.lo = {100.0, 250.0, 20.0}, .hi = {250.0, 260.0, 40.0}});
        engine::close_item(hidden.solid, {.pick_id = 4, .colour = {200, 200, 200}});
        const auto view = from_corner(hidden);
        const auto blues = [&](const engine::SceneEmphasis& emphasis) {
            renderer.draw(hidden, emphasis, view, port);
            const auto image = renderer.read_back();
            int count = 0;
            for (int y = 0; y < image.height; ++y)
                for (int x = 0; x < image.width; ++x) count += is_blue(pixel(image, x, y)) ? 1 : 0;
            return count;
        };
        CHECK(blues({}) == 0);
        CHECK(blues({.selected = {4}}) > 20);
    }
}

TEST_CASE("no line shines through a sheet of 1/8 in", "[engine][renderer]") {
    const auto context = engine::OffscreenContext::create();
    REQUIRE(context);
    engine::Renderer renderer;
    engine::SceneData scene;
    scene.revision = 1;
    const engine::ItemLook grey{.colour = {200, 200, 200}, .line = {60, 60, 60}};
    const engine::ItemLook red{.colour = {200, 200, 200}, .line = {255, 0, 0}};
    engine::append_box(scene.solid.mesh,
                       {.lo = {-300.0, 0.0, -300.0}, .hi = {300.0, 3.175, 300.0}});
    engine::close_item(scene.solid, grey);
    engine::append_box(scene.solid.mesh, {.lo = {-20.0, 3.175, -20.0}, .hi = {20.0, 50.0, 20.0}});
    engine::close_item(scene.solid, red);
    // Something far away, which leaves little of the depth's fineness for what is near.
    engine::append_box(scene.solid.mesh, {.lo = {0.0, 5000.0, 0.0}, .hi = {1.0, 5001.0, 1.0}});
    engine::close_item(scene.solid, grey);
    const auto distance = GENERATE(150.0, 400.0, 1500.0);
    const auto turn = GENERATE(0.0, 0.9);
    const auto reds = [&](const engine::Camera& camera) {
        renderer.draw(scene, {}, camera, {.width = 640, .height = 480});
        const auto image = renderer.read_back();
        int count = 0;
        for (int y = 0; y < image.height; ++y) {
            for (int x = 0; x < image.width; ++x) {
                const auto colour = pixel(image, x, y);
                count += colour.red > colour.green + 10 ? 1 : 0;
            }
        }
        return count;
    };
    CHECK(reds({.distance = distance, .turn = turn}) == 0);
    CHECK(reds({.distance = distance, .turn = turn + std::numbers::pi}) > 0);
}

TEST_CASE("a picture as PNG begins as PNG files do and keeps its size", "[engine][image]") {
    Image image{.width = 3, .height = 2};
    image.rgba.assign(24, 200);
    const auto bytes = engine::png_bytes(image);
    REQUIRE(bytes.size() > 24);
    CHECK(bytes.substr(1, 3) == "PNG");
    CHECK(bytes[19] == 3);
    CHECK(bytes[23] == 2);
}
