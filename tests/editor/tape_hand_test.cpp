#include "editor/commands.h"
#include "editor/keys.h"
#include "editor/open_project.h"
#include "editor/room_scene.h"
#include "editor/seen_scene.h"
#include "editor/view/hole_places.h"
#include "editor/view/tape_ends.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>
#include <glm/geometric.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

using editor::TapeEnd;
using editor::TapeOn;
using editor::TapeTaken;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

constexpr double inch = 25'400'000.0;  // nm

TapeEnd face(glm::dvec3 at, glm::dvec3 normal) {
    TapeEnd end;
    end.at = at;
    end.normal = normal;
    return end;
}
TapeEnd edge(glm::dvec3 from, glm::dvec3 to) {
    TapeEnd end;
    end.on = TapeOn::edge;
    end.at = end.from = from;
    end.to = to;
    return end;
}
TapeEnd corner(glm::dvec3 at, TapeOn on = TapeOn::corner) {
    TapeEnd end;
    end.on = on;
    end.at = at;
    return end;
}

double length_of(const TapeEnd& a, const TapeEnd& b) {
    const double there = editor::tape_reading({a, b}).length;
    CHECK(editor::tape_reading({b, a}).length == there);
    return there;
}

std::optional<TapeEnd> end_at(HeadlessUi& ui, const glm::dvec3& nm) {
    const auto& view = ui.desk.ui.view;
    const auto pixel = engine::pixel_of(view.camera, nm * 1e-6, view.viewport);
    REQUIRE(pixel);
    return editor::tape_end_at(
        {ui.now(), editor::seen_scene(ui.desk), view.camera, view.viewport, 9.0}, *pixel);
}

void click_on(HeadlessUi& ui, const glm::dvec3& nm) {
    const auto& view = ui.desk.ui.view;
    const auto pixel = engine::pixel_of(view.camera, nm * 1e-6, view.viewport);
    REQUIRE(pixel);
    const auto& picture = ui.item("View/picture");
    ui.click_at(picture.left + static_cast<float>(pixel->x),
                picture.top + static_cast<float>(pixel->y));
}

// Of all pieces, in the room, nm.
struct Box {
    glm::dvec3 lo{1e18};
    glm::dvec3 hi{-1e18};
};
Box box_of(HeadlessUi& ui) {
    Box box;
    const auto& resolved = ui.now().resolved;
    for (const auto& piece : resolved.pieces) {
        for (const auto& end : {piece.extents.lo, piece.extents.hi}) {
            const auto at = model::to_room(resolved.frames[piece.frame], end);
            for (int k = 0; k < 3; ++k) {
                box.lo[k] =
                    std::min(box.lo[k], static_cast<double>(at[static_cast<std::size_t>(k)]));
                box.hi[k] =
                    std::max(box.hi[k], static_cast<double>(at[static_cast<std::size_t>(k)]));
            }
        }
    }
    return box;
}

}  // namespace

TEST_CASE("between level faces the tape reads what lies at right angles, to the nanometre",
          "[editor][tape]") {
    const auto a = face({0, 3, 9}, {-1, 0, 0});
    const auto b = face({609'600'001, 70, 800}, {1, 0, 0});
    CHECK(length_of(a, b) == 609'600'001.0);
    const auto reading = editor::tape_reading({a, b});
    CHECK(reading.parts == glm::dvec3{609'600'001.0, 0.0, 0.0});
    CHECK(reading.from == a.at);
}

TEST_CASE("from a face to a corner, a hole or an edge that runs along it the tape is square to it",
          "[editor][tape]") {
    const auto wall = face({0, 0, 5 * inch}, {0, 0, -1});
    CHECK(length_of(wall, corner({inch, 2 * inch, inch})) == 4 * inch);
    CHECK(length_of(wall, edge({inch, 0, inch}, {9 * inch, 0, inch})) == 4 * inch);
    const auto hole = corner({inch, inch, 2 * inch}, TapeOn::hole);
    CHECK(length_of(wall, hole) == 3 * inch);
}

TEST_CASE("between corners and edges the tape reads the least, with its parts", "[editor][tape]") {
    CHECK(length_of(corner({0, 0, 0}), corner({3 * inch, 4 * inch, 12 * inch})) ==
          Approx(13 * inch));
    const auto parts =
        editor::tape_reading({corner({0, 0, 0}), corner({3 * inch, -4 * inch, 12 * inch})}).parts;
    CHECK(parts == glm::dvec3{3 * inch, 4 * inch, 12 * inch});
    // Side by side, and one above the other across it.
    CHECK(length_of(edge({0, 0, 0}, {9 * inch, 0, 0}),
                    edge({2 * inch, 3 * inch, 0}, {20 * inch, 3 * inch, 0})) == 3 * inch);
    CHECK(length_of(edge({0, 0, 0}, {9 * inch, 0, 0}),
                    edge({4 * inch, -inch, 7 * inch}, {4 * inch, 5 * inch, 7 * inch})) == 7 * inch);
    CHECK(length_of(corner({4 * inch, 2 * inch, 0}), edge({0, 0, 0}, {9 * inch, 0, 0})) ==
          2 * inch);
    // Beyond its end the edge's corner is nearest.
    CHECK(length_of(corner({12 * inch, 4 * inch, 0}), edge({0, 0, 0}, {9 * inch, 0, 0})) ==
          Approx(5 * inch));
}

TEST_CASE("where two things do not lie level the tape reads between the places pointed at",
          "[editor][tape]") {
    CHECK(length_of(face({0, 0, 0}, {0, 0, 1}), face({3 * inch, 0, 4 * inch}, {1, 0, 0})) ==
          Approx(5 * inch));
}

TEST_CASE("the tape holds to corners, edges and faces of pieces exactly where they are stated",
          "[editor][tape]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    const auto box = box_of(ui);
    const auto at_corner = end_at(ui, {box.lo.x, box.lo.y, box.lo.z});
    REQUIRE(at_corner);
    CHECK(at_corner->on == TapeOn::corner);
    CHECK(at_corner->at == glm::dvec3{box.lo.x, box.lo.y, box.lo.z});
    const auto at_edge = end_at(ui, {box.lo.x, box.lo.y, (box.lo.z + box.hi.z) / 2 + inch});
    REQUIRE(at_edge);
    CHECK(at_edge->on == TapeOn::edge);
    CHECK(at_edge->at.x == box.lo.x);
    CHECK(at_edge->from.y == box.lo.y);
    CHECK_FALSE(at_edge->of.empty());
    CHECK_FALSE(end_at(ui, {box.lo.x - 20 * inch, box.lo.y, box.lo.z}));
}

TEST_CASE("the tape holds to the middle of a hole", "[editor][tape]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    std::size_t held = 0;
    for (model::Index h = 0; h < ui.now().resolved.holes.size(); ++h) {
        const auto place = editor::hole_place(ui.now(), h);
        if (!place || std::abs(place->axis.y) < 0.5) continue;
        const auto end = end_at(ui, place->at);
        if (!end || end->on != TapeOn::hole) continue;
        CHECK(end->at.x == place->at.x);
        CHECK(end->at.z == place->at.z);
        ++held;
    }
    CHECK(held > 3);
}

TEST_CASE("two clicks take a measure that stays until the next one; Escape ends",
          "[editor][tape]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    ui.press('D');
    CHECK(ui.has("View/taking a measure"));
    const auto box = box_of(ui);
    click_on(ui, {box.lo.x, box.lo.y, box.hi.z});
    REQUIRE(ui.desk.ui.seeing.tape.first);
    CHECK(ui.desk.ui.selection.pieces.empty());
    click_on(ui, {box.hi.x, box.lo.y, box.hi.z});
    REQUIRE(ui.has("View/measure"));
    CHECK(ui.item("View/measure").value == "24; across");
    ui.press(key::escape);
    CHECK_FALSE(ui.desk.ui.seeing.tape.is_held);
    CHECK(ui.item("View/measure").value == "24; across");
    click_on(ui, {box.lo.x, box.lo.y, box.hi.z});
    CHECK_FALSE(ui.desk.ui.selection.pieces.empty());
    ui.press('D');
    click_on(ui, {box.lo.x, box.lo.y, box.hi.z});
    ui.move_to(ui.item("View/picture").left + 3, ui.item("View/picture").bottom - 3);
    CHECK_FALSE(ui.has("View/measure"));
    click_on(ui, {box.hi.x, box.lo.y, box.lo.z});
    const auto value = ui.item("View/measure").value;
    CHECK_THAT(value, Catch::Contains("across 24"));
    CHECK_THAT(value, Catch::Contains("up 20"));
    CHECK_FALSE(ui.desk.ui.seeing.tape.first);
    ui.press(key::escape);
    ui.press(key::escape);
    CHECK_FALSE(ui.has("View/measure"));
}

TEST_CASE("an end is taken where the button is let go, however quickly the pointer came there",
          "[editor][tape]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    const auto box = box_of(ui);
    // Over a piece before the tape is taken in hand: its words must not stay.
    click_on(ui, {box.lo.x, box.lo.y, box.hi.z});
    ui.press(key::escape);
    ui.press('D');
    const auto& view = ui.desk.ui.view;
    const auto picture = ui.item("View/picture");
    for (const double x : {box.lo.x, box.hi.x}) {
        const auto pixel =
            engine::pixel_of(view.camera, glm::dvec3{x, box.lo.y, box.hi.z} * 1e-6, view.viewport);
        REQUIRE(pixel);
        ui.input.move(picture.left + static_cast<float>(pixel->x),
                      picture.top + static_cast<float>(pixel->y));
        ui.input.button(0, true);
        ui.input.button(0, false);
        ui.settle();
        CHECK_FALSE(view.hovered);
    }
    CHECK(ui.item("View/measure").value == "24; across");
}

TEST_CASE("what was measured is not said of a project that has changed", "[editor][tape]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    ui.press('D');
    const auto box = box_of(ui);
    click_on(ui, {box.lo.x, box.lo.y, box.hi.z});
    click_on(ui, {box.hi.x, box.lo.y, box.hi.z});
    REQUIRE(ui.has("View/measure"));
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetFormula{"width", "30 in"})));
    ui.settle();
    CHECK_FALSE(ui.has("View/measure"));
}

TEST_CASE("a measure is read on the tape that is shown", "[editor][tape]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetShown{
                                        {.form = engine::TapeForm::millimetre, .decimals = 1}})));
    ui.settle();
    ui.desk.ui.seeing.tape.taken = TapeTaken{corner({0, 0, 0}), corner({0, 0, 466'725'000})};
    ui.settle();
    CHECK_THAT(ui.item("View/measure").value, Catch::Contains("466.7"));
    CHECK_THAT(ui.item("View/measure").value, Catch::Contains("up"));
}

TEST_CASE("the tape holds to obstacles too", "[editor][tape]") {
    HeadlessUi ui;
    const auto project =
        editor::open_project(std::filesystem::path{BARWRIGHT_SAMPLES} / "work_counter.json");
    REQUIRE(project);
    auto room_alone = *project;
    room_alone.frames.clear();
    editor::replace_project(ui.desk, room_alone, {});
    ui.settle();
    const auto& scene = editor::seen_scene(ui.desk);
    const auto& view = ui.desk.ui.view;
    std::size_t held = 0;
    for (int i = 1; i < 30; ++i) {
        const glm::dvec2 pixel{view.viewport.width * i / 30.0, view.viewport.height * 0.5};
        const auto end =
            editor::tape_end_at({ui.now(), scene, view.camera, view.viewport, 9.0}, pixel);
        if (!end) continue;
        ++held;
        CHECK(std::ranges::any_of(room_alone.room, [&](const model::Obstacle& obstacle) {
            return obstacle.name == end->of;
        }));
    }
    CHECK(held > 3);
}

TEST_CASE("what a cut has taken away is not measured from", "[editor][tape]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    ui.press('C', key::left_shift);
    const auto box = box_of(ui);
    const auto end = end_at(ui, {box.lo.x, box.lo.y, box.lo.z});
    REQUIRE(end);
    CHECK(end->at.y >= static_cast<double>(ui.desk.ui.seeing.cut->at) - 1000.0);
}
