#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using tests::HeadlessUi;
namespace key = editor::key;

namespace {

// A box of 24 x 16 x 20 at the room's corner, and a ledge that reaches into its left side.
void set_up(HeadlessUi& ui) {
    ui.click("Start/Box frame");
    ui.write("Starter/width", "24");
    ui.write("Starter/depth", "16");
    ui.write("Starter/height", "20");
    ui.click("Starter/Make the frame");
    model::Obstacle ledge{.name = "ledge",
                          .shape = model::BoxObstacle{{"-4", "0", "0"}, {"2", "30", "8"}}};
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutObstacle{ledge, ""})));
    ui.settle();
}

const editor::PlaceForm& form_of(const HeadlessUi& ui) {
    return std::get<editor::PlaceForm>(ui.desk.ui.dialog);
}

}  // namespace

TEST_CASE("a frame is placed in the room in one step, after being told what that comes to",
          "[editor][room]") {
    HeadlessUi ui;
    set_up(ui);
    const auto wrong = ui.now().findings.size();
    REQUIRE(wrong > 0);
    ui.press('G', key::left_control, key::left_shift);
    REQUIRE(std::holds_alternative<editor::PlaceForm>(ui.desk.ui.dialog));
    ui.write("Place/place x", "3");
    CHECK(form_of(ui).trial->findings.empty());
    ui.click("Place/Put");
    CHECK(editor::project_of(ui.desk).frames[0].origin[0] == "3");
    CHECK(ui.now().findings.size() < wrong);
    editor::run_command(ui.desk, "edit.undo");
    CHECK(ui.now().findings.size() == wrong);
}

TEST_CASE("a frame is placed by the keyboard alone", "[editor][room]") {
    HeadlessUi ui;
    set_up(ui);
    ui.press('G', key::left_control, key::left_shift);
    ui.settle();
    ui.type("3");
    ui.press(key::tab);
    ui.type("5");
    ui.settle();
    CHECK(form_of(ui).origin == model::Place{"3", "5", "0"});
    ui.press(key::enter);
    ui.settle();
    CHECK(editor::project_of(ui.desk).frames[0].origin == model::Place{"3", "5", "0"});
}

TEST_CASE("a frame is turned where it stands, and nonsense is no place", "[editor][room]") {
    HeadlessUi ui;
    set_up(ui);
    editor::run_command(ui.desk, "frame.place");
    ui.settle();
    ui.write("Place/place y", "nowhere");
    CHECK_FALSE(ui.item("Place/Put").enabled);
    ui.write("Place/place y", "40");
    ui.click("Place/a quarter");
    CHECK(form_of(ui).trial->findings.empty());  // beyond the ledge
    ui.click("Place/Put");
    CHECK(editor::project_of(ui.desk).frames[0].quarter_turns == 1);
    CHECK(editor::project_of(ui.desk).frames[0].origin[1] == "40");
    editor::run_command(ui.desk, "frame.place");
    ui.settle();
    ui.press(key::escape);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("a place that a dimension says is shown as its value, and typed over in the dimension",
          "[editor][room]") {
    HeadlessUi ui;
    set_up(ui);
    editor::Change change;
    change.edits = {
        model::PutDimension{{.name = "from wall", .formula = "3"}, {}},
        model::PlaceFrame{editor::project_of(ui.desk).frames[0].name, {"from wall", "0", "0"}}};
    REQUIRE(editor::submit(ui.desk, change));
    editor::run_command(ui.desk, "frame.place");
    ui.settle();
    CHECK(ui.item("Place/place x").value == "3");
    CHECK(ui.item("Place/dimension of place x").value == "as the dimension from wall says");
    ui.write("Place/place y", "1");
    ui.click("Place/Put");
    CHECK(editor::project_of(ui.desk).frames[0].origin == model::Place{"from wall", "1", "0"});
    editor::run_command(ui.desk, "frame.place");
    ui.settle();
    ui.write("Place/place x", "4 1/2");
    CHECK_THAT(ui.item("Place/dimension of place x").value, Catch::Contains("changes"));
    ui.click("Place/Put");
    CHECK(editor::project_of(ui.desk).frames[0].origin[0] == "from wall");
    CHECK(ui.shown("from wall") == "4 1/2");
}

TEST_CASE("a dimension that other things stand on stays, and the form says so", "[editor][room]") {
    HeadlessUi ui;
    set_up(ui);
    editor::Change change;
    change.edits = {
        model::PutDimension{{.name = "aisle", .formula = "3"}, {}},
        model::PutDimension{{.name = "twice", .formula = "2 * aisle"}, {}},
        model::PlaceFrame{editor::project_of(ui.desk).frames[0].name, {"aisle", "0", "0"}}};
    REQUIRE(editor::submit(ui.desk, change));
    editor::run_command(ui.desk, "frame.place");
    ui.settle();
    ui.write("Place/place x", "4");
    CHECK_THAT(ui.item("Place/dimension of place x").value, Catch::Contains("no longer"));
    ui.click("Place/Put");
    CHECK(editor::project_of(ui.desk).frames[0].origin[0] == "4");
    CHECK(ui.shown("aisle") == "3");
}

TEST_CASE("the form says what the frame takes up in the room", "[editor][room]") {
    HeadlessUi ui;
    set_up(ui);
    editor::run_command(ui.desk, "frame.place");
    ui.settle();
    ui.write("Place/place x", "depth");
    ui.write("Place/place y", "20");
    ui.click("Place/a quarter");
    CHECK(ui.item("Place/takes up").value == "It then takes up X 0 to 16, Y 20 to 44, Z 0 to 20.");
}
