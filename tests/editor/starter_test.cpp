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

namespace {

editor::StarterForm& form_of(HeadlessUi& ui) {
    return std::get<editor::StarterForm>(ui.desk.ui.dialog);
}

void open_box_form(HeadlessUi& ui) {
    editor::run_command(ui.desk, "frame.box");
    ui.settle();
}

}  // namespace

TEST_CASE("a new shelf begins in the widest gap and can be typed over at once",
          "[editor][starter]") {
    HeadlessUi ui;
    open_box_form(ui);
    REQUIRE(form_of(ui).shelf_levels == std::vector<std::string>{"9 in"});
    ui.click("Starter/Add shelf");
    CHECK(form_of(ui).shelf_levels[1] == "14 in");
    ui.type("15");
    CHECK(form_of(ui).shelf_levels[1] == "15");
    ui.click("Starter/Add divider");
    ui.click("Starter/Add divider");
    CHECK(form_of(ui).dividers == std::vector<std::string>{"12 in", "6 in"});
    CHECK(ui.item("Starter/Make the frame").enabled);
}

TEST_CASE("a new shelf of a stepped frame begins above the well", "[editor][starter]") {
    HeadlessUi ui;
    editor::run_command(ui.desk, "frame.stepped");
    ui.settle();
    ui.click("Starter/Add shelf");
    CHECK(form_of(ui).shelf_levels == std::vector<std::string>{"22 in"});
}

TEST_CASE("a size may name another one of the form", "[editor][starter]") {
    HeadlessUi ui;
    open_box_form(ui);
    ui.click("Starter/Add divider");
    ui.write("Starter/divider 1", "width/2");
    ui.write("Starter/depth", "2 * width / 3");
    ui.write("Starter/shelf 1", "depth / 2");
    ui.click("Starter/Make the frame");
    REQUIRE(editor::project_of(ui.desk).frames.size() == 1);
    CHECK(ui.now().summary.errors == 0);
    ui.fill("Lay out/width", "30");
    const auto& planes = ui.now().resolved.frames[0].planes;
    const auto& stated = editor::project_of(ui.desk).frames[0].planes;
    for (std::size_t i = 0; i < stated.size(); ++i) {
        constexpr auto inch = engine::Length::nm_per_inch;
        if (stated[i].name == "divider 1") CHECK(planes[i].position == 15 * inch);
        if (stated[i].name == "shelf 1") CHECK(planes[i].position == 10 * inch);
    }
}

TEST_CASE("a second frame's formulas name its own sizes", "[editor][starter]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    open_box_form(ui);
    ui.write("Starter/width", "40");
    ui.click("Starter/Add divider");
    ui.write("Starter/divider 1", "width/2");
    ui.click("Starter/Make the frame");
    const auto& frame = editor::project_of(ui.desk).frames.at(1);
    for (const auto& plane : frame.planes) {
        if (plane.name == "divider 1") CHECK(plane.position == "box 2 width/2");
    }
}

TEST_CASE("shelves and dividers outside the frame are refused in words", "[editor][starter]") {
    HeadlessUi ui;
    open_box_form(ui);
    ui.write("Starter/shelf 1", "20");
    CHECK(ui.item("Starter/trouble of shelf 1").value ==
          "a shelf lies below the top, which is at 20");
    CHECK_FALSE(ui.item("Starter/Make the frame").enabled);
    ui.write("Starter/shelf 1", "0");
    CHECK_THAT(ui.item("Starter/trouble of shelf 1").value, Catch::Contains("above the bottom"));
    ui.write("Starter/shelf 1", "9");
    ui.click("Starter/Add shelf");
    ui.write("Starter/shelf 2", "9");
    CHECK_THAT(ui.item("Starter/trouble of shelf 2").value, Catch::Contains("shelf 1 is there"));
    ui.click("Starter/Remove shelf 2");
    ui.click("Starter/Add divider");
    ui.write("Starter/divider 1", "-1");
    CHECK_THAT(ui.item("Starter/trouble of divider 1").value, Catch::Contains("left side"));
}

TEST_CASE("the link that removes a shelf stays where it is beside a message", "[editor][starter]") {
    HeadlessUi ui;
    open_box_form(ui);
    const float left = ui.item("Starter/Remove shelf 1").left;
    ui.write("Starter/shelf 1", "nonsense that is longer than the form is wide, by far");
    CHECK(ui.item("Starter/Remove shelf 1").left == left);
    const auto& trouble = ui.item("Starter/trouble of shelf 1");
    CHECK(trouble.right <= 800 + 310);
    CHECK(trouble.bottom - trouble.top < 80);
}

TEST_CASE("sizes of the form that need each other are told", "[editor][starter]") {
    HeadlessUi ui;
    open_box_form(ui);
    ui.write("Starter/width", "depth");
    ui.write("Starter/depth", "width");
    CHECK_THAT(ui.item("Starter/trouble of depth").value, Catch::Contains("needs"));
    ui.write("Starter/width", "-5");
    CHECK_THAT(ui.item("Starter/trouble of width").value, Catch::Contains("more than nothing"));
}
