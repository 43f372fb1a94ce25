#include "editor/commands.h"
#include "editor/keys.h"
#include "editor/obstacle_words.h"
#include "editor/room_scene.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Contains;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

const std::vector<model::Obstacle>& room_of(HeadlessUi& ui) { return ui.now().project->room; }

void go_to_measure(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.measure");
    ui.settle();
}

void put(HeadlessUi& ui, const model::Obstacle& obstacle) {
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutObstacle{obstacle, {}})));
    ui.settle();
}

// So far behind the box frame, all along it.
model::Obstacle box_behind(const std::string& gap) {
    const std::string from = "depth + (" + gap + ")";
    return {.name = "ledge",
            .shape = model::BoxObstacle{{"0", from, "0"}, {"width", from + " + 10 in", "10 in"}}};
}

void choose_kind(HeadlessUi& ui, const std::string& kind) {
    ui.click("Measure/New obstacle");
    ui.settle();
    ui.click("Measure/kinds/" + kind);
    ui.settle();
}

}  // namespace

TEST_CASE("an obstacle of every kind is added as the form proposes it, and has a shape",
          "[editor][measure]") {
    for (const auto& row : editor::obstacle_kinds) {
        if (row.kind == editor::ObstacleKind::scan) continue;
        INFO(row.word);
        HeadlessUi ui;
        go_to_measure(ui);
        choose_kind(ui, row.word);
        CHECK_THAT(ui.item("Obstacle/comes to").value, !Contains("not known"));
        ui.click("Obstacle/Put");
        ui.settle();
        REQUIRE(room_of(ui).size() == 1);
        CHECK(editor::kind_of(room_of(ui)[0]) == row.kind);
        CHECK_FALSE(ui.has("Obstacle/name"));
        engine::SceneBatch batch;
        editor::add_room(batch, *ui.now().project, ui.now().resolved);
        CHECK_FALSE(batch.mesh.vertices.empty());
        CHECK(ui.has("Measure/near " + room_of(ui)[0].name));
    }
}

TEST_CASE("every kind of obstacle has its command in the menu of the room", "[editor][measure]") {
    for (const char* id : {"room.wheel_well", "room.wall", "room.ceiling", "room.box", "room.pipe",
                           "room.door", "room.kept_clear"}) {
        HeadlessUi ui;
        tests::start_box(ui.desk);
        ui.settle();
        ui.click("Top/Room");
        ui.click("Top/Room/" + std::string(id));
        CHECK(std::holds_alternative<editor::ObstacleForm>(ui.desk.ui.dialog));
        CHECK(ui.desk.ui.place == editor::Place::measure);
    }
}

TEST_CASE("a measure that gives no length is told beside its field, and nothing is put",
          "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    choose_kind(ui, "wheel well");
    ui.write("Obstacle/from y", "widht + 2");
    ui.settle();
    CHECK_THAT(ui.item("Obstacle/fault of from y").value, Contains("widht"));
    ui.click("Obstacle/Put");
    CHECK(room_of(ui).empty());
    CHECK(ui.has("Obstacle/trouble"));
    ui.write("Obstacle/from y", "20 in");
    ui.settle();
    CHECK_FALSE(ui.has("Obstacle/fault of from y"));
    ui.click("Obstacle/Put");
    CHECK(room_of(ui).size() == 1);
}

TEST_CASE("the form says what is wrong with a shape while it is typed", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    choose_kind(ui, "pipe or tank");
    ui.write("Obstacle/radius", "0");
    ui.settle();
    CHECK_THAT(ui.item("Obstacle/finding bad_obstacle").value, Contains("radius"));
    ui.click("Obstacle/Put");
    CHECK_THAT(ui.item("Obstacle/trouble").value, Contains("radius"));
    CHECK(room_of(ui).empty());
    ui.write("Obstacle/radius", "2");
    CHECK_FALSE(ui.has("Obstacle/trouble"));
    ui.click("Obstacle/Put");
    CHECK(room_of(ui).size() == 1);
}

TEST_CASE("an obstacle that is bad already may be renamed all the same", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    auto ledge = box_behind("3 in");
    std::get<model::BoxObstacle>(ledge.shape).most[2] = "0";
    put(ui, ledge);
    ui.desk.ui.dialog = editor::obstacle_form(ledge);
    ui.settle();
    ui.write("Obstacle/name", "sill");
    ui.click("Obstacle/Put");
    CHECK(room_of(ui)[0].name == "sill");
}

TEST_CASE("the list tells how near the frame comes, and the view shows where",
          "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("1/8 in"));
    CHECK_THAT(ui.item("Measure/near ledge").value, Contains("from "));
    CHECK(ui.has("Measure/of ledge: clearance"));
    CHECK_FALSE(ui.has("View/nearest to ledge"));
    ui.click("Measure/near ledge");
    ui.settle();
    CHECK_THAT(ui.item("View/nearest to ledge").value, Contains("in from"));
}

TEST_CASE("what stands inside an obstacle is told with its depth", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("-3 in"));
    CHECK_THAT(ui.item("Measure/near ledge").value, Contains(" inside "));
    CHECK(ui.has("Measure/of ledge: inside_obstacle"));
    ui.click("Measure/near ledge");
    CHECK(ui.has("View/nearest to ledge"));
}

TEST_CASE("an obstacle far from all has nothing near and nothing to mend", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("50 in"));
    CHECK(ui.item("Measure/near ledge").value == "nothing near");
    CHECK_FALSE(ui.has("Measure/of ledge: clearance"));
}

TEST_CASE("an obstacle is renamed, copied and removed in its form", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("1 in"));
    ui.click("Measure/obstacle ledge");
    ui.settle();
    ui.write("Obstacle/name", "shelf in the wall");
    ui.press(key::enter);
    ui.settle();
    REQUIRE(room_of(ui).size() == 1);
    CHECK(room_of(ui)[0].name == "shelf in the wall");
    ui.click("Measure/obstacle shelf in the wall");
    ui.settle();
    ui.click("Obstacle/Copy");
    ui.settle();
    ui.click("Obstacle/Put");
    ui.settle();
    REQUIRE(room_of(ui).size() == 2);
    CHECK(room_of(ui)[1].name == "shelf in the wall 2");
    CHECK(room_of(ui)[1].shape == room_of(ui)[0].shape);
    ui.click("Measure/obstacle shelf in the wall");
    ui.settle();
    ui.click("Obstacle/Remove");
    ui.settle();
    REQUIRE(room_of(ui).size() == 1);
    CHECK(room_of(ui)[0].name == "shelf in the wall 2");
}

TEST_CASE("Escape leaves the room as it was, and one step back takes an obstacle out again",
          "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    choose_kind(ui, "box");
    ui.press(key::escape);
    CHECK_FALSE(ui.has("Obstacle/name"));
    CHECK(room_of(ui).empty());
    choose_kind(ui, "box");
    ui.press(key::enter);
    ui.settle();
    CHECK(room_of(ui).size() == 1);
    ui.press('Z', key::left_control);
    CHECK(room_of(ui).empty());
}

TEST_CASE("what the shop keeps clear is typed in Measure, and refused where it cannot be",
          "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("3/16 in"));
    REQUIRE(ui.has("Measure/of ledge: clearance"));
    ui.fill("Measure/clearance", "1/16 in");
    ui.settle();
    CHECK(ui.now().project->shop.clearance == "1/16 in");
    CHECK_FALSE(ui.has("Measure/of ledge: clearance"));
    ui.fill("Measure/frame gap", "-1 in");
    CHECK(ui.now().project->shop.frame_gap == "0");
    CHECK_FALSE(ui.desk.ui.saw.trouble.empty());
}

TEST_CASE("an obstacle's own clearance holds instead of the shop's", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("1/2 in"));
    REQUIRE_FALSE(ui.has("Measure/of ledge: clearance"));
    ui.click("Measure/obstacle ledge");
    ui.settle();
    ui.write("Obstacle/clearance", "2 in");
    ui.settle();
    CHECK(ui.has("Obstacle/finding clearance"));
    ui.click("Obstacle/Put");
    ui.settle();
    CHECK(ui.has("Measure/of ledge: clearance"));
}

TEST_CASE("offsets and stations of a wall are added and taken away", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    choose_kind(ui, "wall");
    ui.click("Obstacle/New in begin");
    ui.settle();
    ui.write("Obstacle/begin 4 place", "70 in");
    ui.write("Obstacle/begin 4 in", "5 in");
    ui.click("Obstacle/New station");
    ui.settle();
    ui.write("Obstacle/station 1 along", "50 in");
    ui.click("Obstacle/Remove begin 2");
    ui.settle();
    ui.click("Obstacle/Put");
    ui.settle();
    REQUIRE(room_of(ui).size() == 1);
    const auto& wall = std::get<model::WallProfile>(room_of(ui)[0].shape);
    REQUIRE(wall.offsets.size() == 3);
    CHECK(wall.offsets[2].height == "70 in");
    CHECK(wall.offsets[2].inset == "5 in");
    REQUIRE(wall.stations.size() == 1);
    CHECK(wall.stations[0].along == "50 in");
    CHECK(wall.stations[0].offsets.size() == 4);
}

TEST_CASE("a click on an obstacle in the view chooses it in the list", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, {.name = "tank",
             .shape = model::BoxObstacle{{"100 in", "0", "0"}, {"140 in", "40 in", "40 in"}}});
    auto& camera = ui.desk.ui.view.camera;
    const auto viewport = ui.desk.ui.view.viewport;
    camera = engine::zoomed(camera, 0.25, {viewport.width / 2.0, viewport.height / 2.0}, viewport);
    ui.settle();
    const auto view = ui.item("View/picture");
    for (int i = 1; i < 200 && ui.desk.ui.selection.subjects.empty(); ++i) {
        const auto column = static_cast<float>(i % 20);
        const auto row = static_cast<float>(i / 20);
        ui.click_at(view.left + (view.right - view.left) * column / 20.0F,
                    view.top + (view.bottom - view.top) * row / 10.0F);
    }
    REQUIRE(ui.desk.ui.selection.subjects.size() == 1);
    CHECK(ui.desk.ui.selection.subjects[0].name == "tank");
    CHECK(ui.item("Measure/near tank").value != "");
    editor::run_command(ui.desk, "room.remove");
    CHECK(room_of(ui).empty());
}

TEST_CASE("elsewhere a click on an obstacle lets go of what is chosen", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("-3 in"));
    ui.click("Measure/near ledge");
    REQUIRE_FALSE(ui.desk.ui.selection.subjects.empty());
    editor::run_command(ui.desk, "place.lay_out");
    ui.settle();
    const auto& view = ui.item("View/picture");
    ui.click_at(view.left + 5, view.top + 5);
    CHECK(ui.desk.ui.selection.subjects.empty());
}

TEST_CASE("a real opening is measured for a frame, changed and removed", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    const std::string frame = ui.now().project->frames[0].name;
    ui.click("Measure/New opening for " + frame);
    ui.settle();
    ui.click("Opening/Put");
    CHECK(ui.has("Opening/trouble"));
    ui.write("Opening/height", "0");
    ui.write("Opening/width bottom", "24");
    ui.write("Opening/width middle", "23 15/16");
    ui.write("Opening/width top", "23 7/8");
    ui.write("Opening/diagonal up right", "43 1/4");
    ui.write("Opening/plumb left", "1/16");
    ui.click("Opening/Put");
    CHECK_THAT(ui.item("Opening/trouble").value, Contains("height"));
    ui.write("Opening/height", "36");
    ui.click("Opening/Put");
    ui.settle();
    REQUIRE(ui.now().project->frames[0].openings.size() == 1);
    const auto& opening = ui.now().project->frames[0].openings[0];
    CHECK(opening.widths[2] == "23 7/8");
    CHECK(opening.diagonals[1].empty());
    CHECK(opening.plumb == std::array<model::Formula, 2>{"1/16", ""});  // not measured
    CHECK_THAT(ui.item("Measure/size of opening").value, Contains("23 7/8"));
    ui.click("Measure/opening opening");
    ui.settle();
    ui.click("Opening/Remove");
    ui.settle();
    CHECK(ui.now().project->frames[0].openings.empty());
}

TEST_CASE("a long list of obstacles and forms stay usable in a small window", "[editor][measure]") {
    HeadlessUi ui(1280, 720);
    go_to_measure(ui);
    for (int i = 0; i < 12; ++i) {
        auto ledge = box_behind("20 in");
        ledge.name += " " + std::to_string(i);
        put(ui, ledge);
    }
    CHECK(ui.item("Measure/clearance").visible);
    CHECK(ui.item("Measure/New obstacle").visible);
    for (const auto& row : editor::obstacle_kinds) {
        if (row.kind == editor::ObstacleKind::scan) continue;
        INFO(row.word);
        choose_kind(ui, row.word);
        CHECK(ui.item("Obstacle/Put").bottom <= 720.0F);
        CHECK(ui.item("Obstacle/Put").visible);
        ui.press(key::escape);
        ui.settle();
    }
}

TEST_CASE("while a dimension is dragged only the clearance that is wanted is looked at",
          "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("6 in"));
    ui.click("Measure/near ledge");
    CHECK_THAT(ui.item("Measure/near ledge").value, Contains(" from "));
    const auto tag = ui.item("View/tags/width");
    ui.move_to(tag.middle_x(), tag.middle_y());
    ui.input.button(0, true);
    ui.settle();
    ui.input.move(tag.middle_x() + 30, tag.middle_y());
    for (int i = 0; i < 4; ++i) ui.frame();
    REQUIRE(ui.desk.ui.hand.dragged);
    REQUIRE(ui.desk.room_memo);
    CHECK(ui.desk.room_memo->reach_mm == 0.0);
    CHECK(ui.item("Measure/near ledge").value == "keeps clear");
    ui.input.button(0, false);
    ui.settle();
    CHECK_THAT(ui.item("Measure/near ledge").value, Contains(" from "));
}

TEST_CASE("what an obstacle in a form comes to is worked out once", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    std::optional<editor::TriedObstacle> tried;
    auto obstacle = box_behind("1 in");
    const auto facts = [&]() -> const editor::ObstacleFacts& {
        return editor::facts_of(tried, obstacle, ui.now(), *ui.desk.catalogue);
    };
    const auto distance = facts().nearest.value().distance;
    tried->facts.nearest->distance = 7.0;  // stays for as long as nothing is worked out
    CHECK(facts().nearest.value().distance == 7.0);
    obstacle = box_behind("2 in");
    CHECK(facts().nearest.value().distance == Approx(distance + 25.4));
    tried->facts.nearest->distance = 7.0;
    put(ui, obstacle);  // another state of the project
    CHECK(facts().nearest.value().distance == Approx(distance + 25.4));
}

TEST_CASE("what a survey comes to stays from frame to frame", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    editor::run_command(ui.desk, "room.well_by_tape");
    ui.settle();
    for (const auto& [field, text] :
         {std::pair{"start", "2"}, {"length", "34"}, {"height", "9 1/4"}, {"reach", "8 1/2"}}) {
        ui.write(std::string("Well/") + field, text);
    }
    auto& survey = std::get<editor::WellSurvey>(ui.desk.ui.dialog);
    REQUIRE(survey.trial);
    survey.trial->facts.findings.clear();
    survey.trial->facts.nearest.reset();
    ui.settle();  // the form is shorter now
    CHECK_THAT(ui.item("Well/comes to").value, Contains("nothing near"));
    ui.write("Well/height", "10");
    CHECK_THAT(ui.item("Well/comes to").value, !Contains("nothing near"));
}

TEST_CASE("the copy of an obstacle leaves what was changed with the first one",
          "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("6 in"));
    ui.click("Measure/obstacle ledge");
    ui.settle();
    ui.write("Obstacle/clearance", "3/4");
    ui.click("Obstacle/Copy");
    ui.settle();
    CHECK(room_of(ui).at(0).clearance == "3/4");
    const auto& form = std::get<editor::ObstacleForm>(ui.desk.ui.dialog);
    CHECK(form.instead_of.empty());
    CHECK(form.obstacle.name == "ledge 2");
    CHECK(form.obstacle.clearance == "3/4");
    ui.click("Obstacle/Put");
    ui.settle();
    CHECK(room_of(ui).size() == 2);
}

TEST_CASE("an obstacle is not copied while its form says what cannot be", "[editor][measure]") {
    HeadlessUi ui;
    go_to_measure(ui);
    put(ui, box_behind("6 in"));
    ui.click("Measure/obstacle ledge");
    ui.settle();
    ui.write("Obstacle/clearance", "some");
    ui.click("Obstacle/Copy");
    ui.settle();
    CHECK(ui.has("Obstacle/trouble"));
    CHECK(std::get<editor::ObstacleForm>(ui.desk.ui.dialog).instead_of == "ledge");
    CHECK(room_of(ui).at(0).clearance.empty());
}
