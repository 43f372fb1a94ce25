#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/places/tape_choice.h"
#include "editor/view/dimension_tags.h"
#include "editor/view/view_panel.h"
#include "engine/render/camera.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using tests::HeadlessUi;
namespace key = editor::key;

namespace {

// Where the middle of a piece shows in the window.
glm::dvec2 place_of(HeadlessUi& ui, model::Index piece) {
    const auto& resolved = ui.now().resolved;
    const auto& it = resolved.pieces[piece];
    const auto& wall = it.plates[0].box;
    const model::Point middle{(wall.lo[0] + wall.hi[0]) / 2, (wall.lo[1] + wall.hi[1]) / 2,
                              (wall.lo[2] + wall.hi[2]) / 2};
    const auto room = model::to_room(resolved.frames[it.frame], middle);
    const glm::dvec3 mm = glm::dvec3(room[0], room[1], room[2]) / 1.0e6;
    const auto pixel = engine::pixel_of(ui.desk.ui.view.camera, mm, ui.desk.ui.view.viewport);
    REQUIRE(pixel);
    const auto& view = ui.item("View/picture");
    return *pixel + glm::dvec2(view.left, view.top);
}

}  // namespace

TEST_CASE("the whole frame shows after it was made", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto& view = ui.item("View/picture");
    for (model::Index i = 0; i < ui.now().resolved.pieces.size(); ++i) {
        const auto at = place_of(ui, i);
        CHECK(at.x > static_cast<double>(view.left));
        CHECK(at.x < static_cast<double>(view.right));
        CHECK(at.y > static_cast<double>(view.top));
        CHECK(at.y < static_cast<double>(view.bottom));
    }
}

TEST_CASE("a click on a piece chooses it, a click beside it lets go", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto at = place_of(ui, 0);
    ui.click_at(static_cast<float>(at.x), static_cast<float>(at.y));
    REQUIRE(ui.desk.ui.selection.pieces.size() == 1);
    const auto& view = ui.item("View/picture");
    ui.click_at(view.left + 5, view.top + 5);
    CHECK(ui.desk.ui.selection.pieces.empty());
}

TEST_CASE("a click with control or shift held adds to what is chosen", "[editor][view]") {
    for (const int modifier : {key::left_control, key::left_shift}) {
        HeadlessUi ui;
        tests::start_box(ui.desk);
        ui.settle();
        for (const model::Index piece : {0U, 1U}) {
            const auto at = place_of(ui, piece);
            ui.input.key(modifier, true);
            ui.click_at(static_cast<float>(at.x), static_cast<float>(at.y));
            ui.input.key(modifier, false);
        }
        CHECK(ui.desk.ui.selection.pieces.size() == 2);
    }
}

TEST_CASE("the piece under the pointer is known without a click", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto at = place_of(ui, 0);
    ui.move_to(static_cast<float>(at.x), static_cast<float>(at.y));
    CHECK(ui.desk.ui.view.hovered);
    CHECK(editor::emphasis_of(ui.now(), {}, ui.desk.ui.view).hovered);
}

TEST_CASE("a drag turns the view and chooses nothing", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto before = ui.desk.ui.view.camera;
    ui.drag("View/picture", 100, 30);
    CHECK(ui.desk.ui.view.camera.turn != before.turn);
    CHECK(ui.desk.ui.view.camera.tilt != before.tilt);
    CHECK(ui.desk.ui.view.camera.target == before.target);
    CHECK(ui.desk.ui.selection.pieces.empty());
}

TEST_CASE("a drag with the right button or with shift moves the view", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto before = ui.desk.ui.view.camera;
    ui.drag("View/picture", 60, 0, 1);
    const auto moved = ui.desk.ui.view.camera;
    CHECK(moved.turn == before.turn);
    CHECK(moved.target != before.target);
    ui.drag("View/picture", -60, 0, 0, key::left_shift);
    CHECK(ui.desk.ui.view.camera.target != moved.target);
    CHECK(ui.desk.ui.view.camera.turn == before.turn);
}

TEST_CASE("the wheel zooms and F shows everything again", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto before = ui.desk.ui.view.camera;
    const auto& view = ui.item("View/picture");
    ui.move_to(view.middle_x(), view.middle_y());
    ui.input.wheel(0, 3);
    ui.settle();
    CHECK(ui.desk.ui.view.camera.distance < before.distance);
    ui.press('F');
    CHECK(ui.desk.ui.view.camera.distance == Approx(before.distance));
}

TEST_CASE("a dimension that is a plane's position has a tag in the view", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto tags = editor::tagged_dimensions(ui.now());
    CHECK(tags.size() >= 3);
    CHECK(ui.has("View/tags/width"));
    CHECK(ui.has("View/tags/height"));
}

TEST_CASE("pulling a tag in the view changes the dimension, as one step", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    REQUIRE(ui.shown("width") == "24");
    ui.drag("View/tags/width", 60, 0);
    const auto wider = editor::value_of(ui.now(), "width");
    REQUIRE(wider);
    CHECK(wider->length > engine::Length::from_nm(24 * engine::Length::nm_per_inch));
    ui.press('Z', key::left_control);
    CHECK(ui.shown("width") == "24");
}

TEST_CASE("a tag is typed into like a strip of the list", "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("View/tags/height");
    ui.press('A', key::left_control);
    ui.type("22 1/4");
    ui.press(key::enter);
    CHECK(ui.shown("height") == "22 1/4");
}

TEST_CASE("on every tape a pulled tag follows the pointer by the same length", "[editor][view]") {
    std::optional<double> first;
    for (const auto& tape : editor::offered_tapes()) {
        INFO(editor::tape_name(tape));
        HeadlessUi ui;
        tests::start_box(ui.desk);
        REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetShown{tape})));
        ui.settle();
        ui.press('1');
        ui.drag("View/tags/width", 40, 0);
        const auto width = editor::value_of(ui.now(), "width")->length;
        if (!first) first = width.mm();
        CHECK(width.mm() == Approx(*first).margin(2 * editor::hand_step(tape).mm() + 1.6));
        CHECK(width.nm() % engine::tape_step(tape).nm() == 0);
    }
}

TEST_CASE("a tag pulled until its line is gone is held until the button is let go, and not longer",
          "[editor][view]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    const auto at = ui.item("View/tags/width");
    ui.move_to(at.middle_x(), at.middle_y());
    ui.input.button(0, true);
    for (int i = 1; i <= 40; ++i) {
        ui.input.move(at.middle_x() - 20.0F * static_cast<float>(i), at.middle_y());
        ui.frame();
    }
    ui.settle();
    REQUIRE(ui.desk.ui.hand.dragged);
    CHECK(ui.has("View/tags/width"));
    CHECK(ui.shown("width") != "24");
    SECTION("the hand brings it back") {
        ui.input.move(at.middle_x() + 4, at.middle_y());
        ui.settle();
        CHECK(editor::value_of(ui.now(), "width")->length.mm() == Approx(609.6).margin(8));
    }
    SECTION("the next press changes nothing") {
        ui.input.button(0, false);
        ui.settle();
        CHECK_FALSE(ui.desk.ui.hand.dragged);
        const auto pulled = ui.shown("width");
        ui.click("Lay out/width");
        ui.press(key::escape);
        CHECK(ui.shown("width") == pulled);
        ui.press('Z', key::left_control);
        CHECK(ui.shown("width") == "24");
    }
}

TEST_CASE("tags find their place in a view that is smaller than they are", "[editor][view]") {
    HeadlessUi ui(300, 200);
    tests::start_box(ui.desk);
    ui.settle();
    const auto& view = ui.item("View/picture");
    for (const auto& tag : editor::tagged_dimensions(ui.now())) {
        const auto name = editor::project_of(ui.desk).dimensions[tag.dimension].name;
        if (ui.has("View/tags/" + name)) CHECK(ui.item("View/tags/" + name).left >= view.left);
    }
}

TEST_CASE("no tag in the view lies on another one", "[editor][view]") {
    HeadlessUi ui;
    tests::start_frame(ui.desk, editor::StarterKind::stepped);
    tests::start_box(ui.desk);
    tests::start_box(ui.desk);
    ui.settle();
    std::vector<editor::ItemRecord> tags;
    for (const auto& dimension : editor::project_of(ui.desk).dimensions) {
        const std::string name = "View/tags/" + dimension.name;
        if (ui.has(name)) tags.push_back(ui.item(name));
    }
    REQUIRE(tags.size() > 8);
    for (std::size_t i = 0; i < tags.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const bool are_apart = tags[i].right <= tags[j].left || tags[j].right <= tags[i].left ||
                                   tags[i].bottom <= tags[j].top || tags[j].bottom <= tags[i].top;
            INFO(tags[i].value << " at " << tags[i].left << ", " << tags[i].top << "; "
                               << tags[j].value << " at " << tags[j].left << ", " << tags[j].top);
            CHECK(are_apart);
        }
    }
}
