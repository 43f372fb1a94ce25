#include "editor/by_name.h"
#include "editor/commands.h"
#include "editor/dimension_values.h"
#include "editor/keys.h"
#include "editor/open_project.h"
#include "editor/room_scene.h"
#include "editor/seen_scene.h"
#include "editor/typing.h"
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

model::Index piece_of(HeadlessUi& ui, std::string_view member) {
    const auto& now = ui.now();
    const auto& members = now.project->frames.front().members;
    const auto* it = editor::by_name(members, member);
    REQUIRE(it != nullptr);
    const auto index = static_cast<model::Index>(it - members.data());
    const auto& pieces = now.resolved.pieces;
    const auto at = std::ranges::find_if(
        pieces, [&](const model::Piece& piece) { return piece.member == index; });
    REQUIRE(at != pieces.end());
    return static_cast<model::Index>(at - pieces.begin());
}

// A place of a member's face that looks along an axis of the room.
TapeEnd face_of(HeadlessUi& ui, std::string_view member, int axis, bool is_far) {
    const auto index = piece_of(ui, member);
    const auto& piece = ui.now().resolved.pieces[index];
    const auto& frame = ui.now().resolved.frames[piece.frame];
    const auto a = model::to_room(frame, piece.extents.lo);
    const auto b = model::to_room(frame, piece.extents.hi);
    TapeEnd end;
    end.piece = index;
    end.of = member;
    for (int k = 0; k < 3; ++k) {
        const auto i = static_cast<std::size_t>(k);
        end.at[k] = static_cast<double>(std::min(a[i], b[i]));
        if (k == axis && is_far) end.at[k] = static_cast<double>(std::max(a[i], b[i]));
    }
    end.normal[axis] = is_far ? 1.0 : -1.0;
    return end;
}

// From the outside of the one to the outside of the other.
void measure_over(HeadlessUi& ui, std::string_view first, std::string_view second, int axis) {
    const bool is_up =
        face_of(ui, first, axis, false).at[axis] < face_of(ui, second, axis, false).at[axis];
    ui.desk.ui.seeing.tape.taken =
        TapeTaken{face_of(ui, first, axis, !is_up), face_of(ui, second, axis, is_up)};
    ui.settle();
    REQUIRE(ui.has("View/measure"));
}

void type_length(HeadlessUi& ui, std::string_view text) {
    ui.click("View/measure");
    REQUIRE(ui.has("View/measure typed"));
    ui.press('A', key::left_control);
    ui.type(text);
    ui.press(key::enter);
    ui.settle();
}

void start_seen_from_front(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
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

TEST_CASE(
    "a corner beside a hole is held to, and the hole where the pointer is nearer to its middle",
    "[editor][tape]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('1');
    auto& view = ui.desk.ui.view;
    // From so far that a hole, the end of its bar and the pointer are a few pixels apart.
    view.camera = engine::zoomed(
        view.camera, 0.22, {view.viewport.width / 2.0, view.viewport.height / 2.0}, view.viewport);
    const auto box = box_of(ui);
    int corners = 0;
    int holes = 0;
    for (const double x : {box.lo.x, box.hi.x}) {
        for (const double z : {box.lo.z, box.hi.z}) {
            const auto end = end_at(ui, {x, box.lo.y, z});
            REQUIRE(end);
            corners += end->on == TapeOn::corner ? 1 : 0;
        }
    }
    for (model::Index h = 0; h < ui.now().resolved.holes.size(); ++h) {
        const auto place = editor::hole_place(ui.now(), h);
        if (!place || std::abs(place->axis.y) < 0.5) continue;
        const auto end = end_at(ui, place->at);
        holes += end && end->on == TapeOn::hole ? 1 : 0;
    }
    CHECK(corners == 4);
    CHECK(holes > 3);
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

TEST_CASE("a longer value typed into the measure over two posts sets the width, in one step",
          "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    const auto before = editor::project_of(ui.desk);
    measure_over(ui, "post front left", "post front right", 0);
    REQUIRE(ui.item("View/measure").value == "24; across");
    type_length(ui, "30");
    CHECK(ui.shown("width") == "30");
    CHECK(ui.desk.history.undo_label() == "Change width");
    // It is measured again.
    REQUIRE(ui.has("View/measure"));
    CHECK(ui.item("View/measure").value == "30; across");
    CHECK(ui.desk.ui.seeing.tape.taken->second == face_of(ui, "post front right", 0, true));
    ui.press('Z', key::left_control);
    CHECK(editor::project_of(ui.desk) == before);
    CHECK_FALSE(ui.has("View/measure"));
}

TEST_CASE("a length is typed into a measure that was taken by two clicks", "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    ui.press('D');
    const auto box = box_of(ui);
    click_on(ui, {box.lo.x, box.lo.y, box.hi.z});
    click_on(ui, {box.hi.x, box.lo.y, box.hi.z});
    type_length(ui, "22 1/2");
    CHECK(ui.shown("width") == "22 1/2");
    CHECK(ui.item("View/measure").value == "22 1/2; across");
    CHECK(ui.desk.ui.seeing.tape.is_held);
}

TEST_CASE("a measure grows on the side of its second end, however its frame is turned",
          "[editor][tape]") {
    for (const int turns : {0, 1, 2, 3}) {
        for (const bool is_from_right : {false, true}) {
            CAPTURE(turns, is_from_right);
            HeadlessUi ui;
            start_seen_from_front(ui);
            const auto& frame = editor::project_of(ui.desk).frames.front();
            REQUIRE(editor::submit(ui.desk, editor::change_of(model::PlaceFrame{
                                                frame.name, {"7 in", "5 in", "3 in"}, turns})));
            ui.desk.ui.view.wants_fit = true;
            ui.settle();
            const int axis = turns % 2;
            const std::string left = "post front left";
            const std::string right = "post front right";
            measure_over(ui, is_from_right ? right : left, is_from_right ? left : right, axis);
            const auto fixed = ui.desk.ui.seeing.tape.taken->first;
            const auto steps = ui.desk.history.revision();
            type_length(ui, "30");
            CHECK(ui.desk.history.revision() == steps + 1);
            CHECK(ui.desk.history.undo_label() ==
                  (is_from_right ? "Move plane left" : "Change width"));
            REQUIRE(ui.has("View/measure"));
            CHECK_THAT(ui.item("View/measure").value, Catch::StartsWith("30; "));
            measure_over(ui, left, right, axis);
            CHECK_THAT(ui.item("View/measure").value, Catch::StartsWith("30; "));
            const auto now = ui.desk.ui.seeing.tape.taken;
            CHECK((is_from_right ? now->second : now->first).at == fixed.at);
        }
    }
}

TEST_CASE("the end of a bar is moved by the plane that it runs to", "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    ui.desk.ui.seeing.tape.taken =
        TapeTaken{face_of(ui, "post front left", 0, false), face_of(ui, "rail front top", 0, true)};
    ui.settle();
    const auto before = editor::tape_reading(*ui.desk.ui.seeing.tape.taken).length;
    type_length(ui, "28");
    REQUIRE(ui.has("View/measure"));
    CHECK(ui.item("View/measure").value == "28; across");
    CHECK(face_of(ui, "rail front top", 0, true).at.x -
              face_of(ui, "post front left", 0, false).at.x ==
          28 * inch);
    CHECK(editor::value_of(ui.now(), "width")->length.nm() ==
          std::llround(24 * inch + 28 * inch - before));
}

TEST_CASE(
    "where the plane behind the second end follows a formula nothing is typed, and it is "
    "said why",
    "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetFormula{"shelf 1", "height / 2"})));
    ui.settle();
    const auto before = ui.desk.history.revision();
    measure_over(ui, "rail front bottom", "rail front shelf 1", 2);
    const auto label = ui.item("View/measure");
    ui.move_to(label.middle_x(), label.middle_y());
    CHECK_THAT(ui.item("View/what moves").value,
               Catch::Contains("shelf 1 follows a formula, height / 2"));
    ui.click("View/measure");
    CHECK_FALSE(ui.has("View/measure typed"));
    ui.move_to(3, 3);
    CHECK_THAT(ui.item("View/measure remark").value, Catch::Contains("follows a formula"));
    CHECK(ui.desk.history.revision() == before);
    CHECK(ui.has("View/measure"));
    // The other way round it is the bottom that moves.
    measure_over(ui, "rail front shelf 1", "rail front bottom", 2);
    type_length(ui, "12");
    CHECK(ui.desk.history.undo_label() == "Move plane bottom");
    CHECK_THAT(ui.item("View/measure").value, Catch::StartsWith("12; "));
}

TEST_CASE("a length is refused where the other end would move too", "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetFormula{"shelf 1", "height / 2"})));
    ui.settle();
    const auto before = ui.desk.history.revision();
    measure_over(ui, "rail front shelf 1", "rail front top", 2);
    type_length(ui, "14");
    CHECK_THAT(ui.item("View/measure remark").value,
               Catch::Contains("the other end goes with top"));
    CHECK(ui.item("View/measure typed").value == "14");
    CHECK(ui.desk.history.revision() == before);
}

TEST_CASE("what is no length is refused with the reason, and stays to be mended",
          "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    const auto before = ui.desk.history.revision();
    measure_over(ui, "post front left", "post front right", 0);
    for (const auto* text : {"30 parsecs", "24 in +", "0", "-3"}) {
        CAPTURE(text);
        type_length(ui, text);
        CHECK_FALSE(ui.item("View/measure remark").value.empty());
        CHECK(ui.item("View/measure typed").value == text);
        CHECK(ui.desk.history.revision() == before);
        // Left as it is, it is there again at the next click.
        ui.click_at(ui.item("View/picture").left + 3, ui.item("View/picture").bottom - 3);
        REQUIRE(ui.has("View/measure"));
        CHECK(ui.has("View/measure remark"));
        ui.click("View/measure");
        CHECK(ui.item("View/measure typed").value == text);
        ui.press(key::escape);
    }
    type_length(ui, "26");
    CHECK(ui.shown("width") == "26");
}

TEST_CASE("Escape leaves a length that is half typed, and changes nothing", "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    const auto before = ui.desk.history.revision();
    measure_over(ui, "post front left", "post front right", 0);
    ui.click("View/measure");
    REQUIRE(ui.has("View/measure typed"));
    ui.press('A', key::left_control);
    ui.type("40");
    ui.press(key::escape);
    CHECK_FALSE(ui.has("View/measure typed"));
    REQUIRE(ui.has("View/measure"));
    CHECK(ui.item("View/measure").value == "24; across");
    CHECK(ui.desk.history.revision() == before);
    ui.settle();
    CHECK(ui.shown("width") == "24");
}

TEST_CASE("what is half typed into a measure is taken by a click elsewhere, and before a save",
          "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    measure_over(ui, "post front left", "post front right", 0);
    ui.click("View/measure");
    ui.press('A', key::left_control);
    ui.type("27");
    SECTION("a click elsewhere") {
        ui.click_at(ui.item("View/picture").left + 3, ui.item("View/picture").bottom - 3);
    }
    SECTION("before a save") {
        editor::take_typing(ui.desk);
        ui.settle();
    }
    CHECK(ui.shown("width") == "27");
    REQUIRE(ui.has("View/measure"));
    CHECK(ui.item("View/measure").value == "27; across");
}

TEST_CASE("into a measure that leans, or to what is no bar, nothing is typed, and it is said why",
          "[editor][tape]") {
    HeadlessUi ui;
    start_seen_from_front(ui);
    auto& tape = ui.desk.ui.seeing.tape;
    const auto box = box_of(ui);
    tape.taken = TapeTaken{corner(box.lo), corner({box.hi.x, box.lo.y, box.hi.z})};
    ui.settle();
    ui.click("View/measure");
    CHECK_FALSE(ui.has("View/measure typed"));
    CHECK_THAT(ui.item("View/measure remark").value, Catch::Contains("along one axis"));
    tape.refused.reset();
    tape.taken = TapeTaken{face_of(ui, "post front left", 0, false),
                           corner({box.hi.x + 5 * inch, box.lo.y, box.lo.z})};
    ui.settle();
    ui.click("View/measure");
    CHECK_FALSE(ui.has("View/measure typed"));
    CHECK_THAT(ui.item("View/measure remark").value, Catch::Contains("between two bars"));
}
