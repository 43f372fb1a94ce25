#include "editor/commands.h"
#include "editor/dialogs/starter_form.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using tests::HeadlessUi;
namespace key = editor::key;

TEST_CASE("an empty desk offers to start a frame", "[editor][starter]") {
    HeadlessUi ui;
    ui.click("Start/Box frame");
    CHECK(std::holds_alternative<editor::StarterForm>(ui.desk.ui.dialog));
}

TEST_CASE("an empty desk offers the samples", "[editor][starter]") {
    HeadlessUi ui;
    ui.desk.samples = {std::filesystem::path(BARWRIGHT_SAMPLES) / "parts_box.json"};
    ui.settle();
    ui.click("Start/sample parts box");
    CHECK_FALSE(editor::project_of(ui.desk).frames.empty());
    CHECK(ui.desk.history.is_saved());
}

TEST_CASE("a box frame is made from the form's sizes", "[editor][starter]") {
    HeadlessUi ui;
    ui.click("Start/Box frame");
    ui.write("Starter/width", "24");
    ui.write("Starter/depth", "16");
    ui.write("Starter/height", "20");
    ui.write("Starter/shelf 1", "9");
    ui.click("Starter/Make the frame");
    REQUIRE(editor::project_of(ui.desk).frames.size() == 1);
    CHECK(ui.now().summary.pieces >= 16);
    CHECK(ui.now().summary.fasteners > 0);
    CHECK_FALSE(ui.has("Start/Box frame"));
}

TEST_CASE("enter makes the frame from any field of the form", "[editor][starter]") {
    HeadlessUi ui;
    editor::run_command(ui.desk, "frame.box");
    ui.settle();
    ui.fill("Starter/width", "30");
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
}

TEST_CASE("shelves and dividers are added and taken away in the form", "[editor][starter]") {
    HeadlessUi ui;
    editor::run_command(ui.desk, "frame.box");
    ui.settle();
    ui.click("Starter/Add shelf");
    ui.write("Starter/shelf 2", "14");
    ui.click("Starter/Remove shelf 1");
    ui.click("Starter/Add divider");
    ui.write("Starter/divider 1", "width/2");
    const auto& form = std::get<editor::StarterForm>(ui.desk.ui.dialog);
    CHECK(form.shelf_levels == std::vector<std::string>{"14"});
    CHECK(form.dividers == std::vector<std::string>{"width/2"});
}

TEST_CASE("a size that cannot be read keeps the form open", "[editor][starter]") {
    HeadlessUi ui;
    editor::run_command(ui.desk, "frame.box");
    ui.settle();
    ui.fill("Starter/width", "twenty");
    CHECK(editor::project_of(ui.desk).frames.empty());
    CHECK_FALSE(ui.item("Starter/Make the frame").enabled);
}

TEST_CASE("a stepped frame is made, and takes the section that was chosen", "[editor][starter]") {
    HeadlessUi ui;
    ui.click("Start/Stepped frame");
    ui.click("Starter/made of");
    ui.write("Starter/made of list/Filter", "angle 3/4 x 3/4 x 1/8");
    ui.press(key::enter);
    CHECK(std::get<editor::StarterForm>(ui.desk.ui.dialog).section == "angle 3/4 x 3/4 x 1/8");
    ui.click("Starter/Make the frame");
    REQUIRE(editor::project_of(ui.desk).frames.size() == 1);
    CHECK(editor::project_of(ui.desk).stock[0].section == "angle 3/4 x 3/4 x 1/8");
}

TEST_CASE("a second frame stands beside the first under a name of its own", "[editor][starter]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    editor::run_command(ui.desk, "frame.box");
    ui.settle();
    ui.click("Starter/Make the frame");
    const auto& frames = editor::project_of(ui.desk).frames;
    REQUIRE(frames.size() == 2);
    CHECK(frames[0].name != frames[1].name);
    CHECK(ui.now().resolved.frames[1].origin[0] > ui.now().resolved.frames[0].origin[0]);
}

TEST_CASE("making a frame is one step of the history", "[editor][starter]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.history.undo();
    CHECK_FALSE(ui.desk.history.can_undo());
    CHECK(editor::project_of(ui.desk).stock.empty());
}
