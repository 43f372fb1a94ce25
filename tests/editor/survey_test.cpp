#include "editor/commands.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using Catch::Contains;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

const model::Project& project_in(HeadlessUi& ui) { return *ui.now().project; }

void open(HeadlessUi& ui, const char* command) {
    editor::run_command(ui.desk, command);
    ui.settle();
}

void measure_well(HeadlessUi& ui) {
    open(ui, "room.well_by_tape");
    ui.write("Well/name", "near well");
    ui.write("Well/start", "20 1/2");
    ui.write("Well/length", "34");
    ui.write("Well/height", "9 1/4");
    ui.write("Well/reach", "8 1/2");
    ui.settle();
}

}  // namespace

TEST_CASE("a wheel well is entered by the tape in one step that leaves named dimensions",
          "[editor][survey]") {
    HeadlessUi ui;
    measure_well(ui);
    ui.write("Well/top reach", "7 3/4");
    ui.write("Well/rounding", "1");
    ui.click("Well/Put");
    ui.settle();
    REQUIRE(project_in(ui).room.size() == 1);
    const auto& well = std::get<model::WheelWell>(project_in(ui).room[0].shape);
    CHECK(well.most[0] == "near well reach");
    CHECK(well.lean == "near well lean");
    CHECK(ui.shown("near well length") == "34");
    CHECK(ui.desk.ui.place == editor::Place::measure);
    ui.press('Z', key::left_control);
    CHECK(project_in(ui).room.empty());
    CHECK(project_in(ui).dimensions.empty());
}

TEST_CASE("a well cannot be put before its needed lengths are measured", "[editor][survey]") {
    HeadlessUi ui;
    open(ui, "room.well_by_tape");
    CHECK_FALSE(ui.item("Well/Put").enabled);
    CHECK(ui.has("Well/fault of start"));
    CHECK_FALSE(ui.has("Well/fault of behind"));
    measure_well(ui);
    CHECK(ui.item("Well/Put").enabled);
    CHECK_THAT(ui.item("Well/comes to").value, Contains("34 long"));
}

TEST_CASE("measurements that disagree ask to measure again", "[editor][survey]") {
    HeadlessUi ui;
    measure_well(ui);
    CHECK_FALSE(ui.has("Well/closing along the van"));
    ui.write("Well/behind", "65 1/2");
    ui.write("Well/room length", "120");
    ui.settle();
    CHECK_THAT(ui.item("Well/closing along the van").value, Contains("closes to the mark"));
    ui.write("Well/room length", "120 1/8");
    ui.settle();
    CHECK_THAT(ui.item("Well/closing along the van").value, Contains("as good as a tape"));
    ui.write("Well/room length", "121");
    ui.settle();
    CHECK_THAT(ui.item("Well/closing along the van").value, Contains("1 in less"));
    CHECK_THAT(ui.item("Well/closing along the van").value, Contains("measure again"));
    ui.write("Well/across", "52");
    ui.write("Well/opposite", "8 1/2");
    ui.write("Well/room width", "69");
    ui.settle();
    CHECK_THAT(ui.item("Well/closing across the van").value, Contains("closes"));
    ui.click("Well/Put");
    ui.settle();
    CHECK_THAT(project_in(ui).room[0].note, Contains("measure again"));
}

TEST_CASE("a gap below two straightedges becomes the radius of the rounding", "[editor][survey]") {
    HeadlessUi ui;
    measure_well(ui);
    ui.click("Well/rounding is gap");
    ui.write("Well/rounding", "0.414213562 in");
    ui.click("Well/Put");
    ui.settle();
    REQUIRE(project_in(ui).room.size() == 1);
    CHECK_THAT(ui.shown("near well rounding"), Contains("1"));
    const auto value = editor::derived(ui.desk).resolved.dimensions.back();
    REQUIRE(value);
    CHECK(value->length.mm() == Approx(25.4).margin(1.6));
}

TEST_CASE("a side that leans out over the floor is told and not put", "[editor][survey]") {
    HeadlessUi ui;
    measure_well(ui);
    ui.write("Well/top reach", "9");
    ui.settle();
    CHECK(ui.has("Well/lean trouble"));
    CHECK_FALSE(ui.item("Well/Put").enabled);
    ui.press(key::enter);
    CHECK(project_in(ui).room.empty());
}

TEST_CASE("a name that is taken is refused and all readings stay", "[editor][survey]") {
    HeadlessUi ui;
    measure_well(ui);
    ui.press(key::enter);
    ui.settle();
    REQUIRE(project_in(ui).room.size() == 1);
    measure_well(ui);
    ui.click("Well/Put");
    CHECK_THAT(ui.item("Well/trouble").value, Contains("already"));
    CHECK(ui.item("Well/length").value == "34");
    ui.press(key::escape);
    CHECK_FALSE(ui.has("Well/name"));
    CHECK(project_in(ui).room.size() == 1);
}

TEST_CASE("a wall is entered from a plumb line, each height closing for itself",
          "[editor][survey]") {
    HeadlessUi ui;
    open(ui, "room.wall_by_tape");
    ui.write("Wall/name", "left wall");
    ui.write("Wall/line", "34 1/2");
    ui.write("Wall/to", "96");
    const char* gaps[] = {"34 1/2", "34 1/4", "33", "30"};
    for (int i = 0; i < 4; ++i) {
        ui.write("Wall/row " + std::to_string(i + 1) + " to wall", gaps[i]);
    }
    ui.write("Wall/row 3 to other", "33");
    ui.write("Wall/row 3 across", "67");
    ui.settle();
    CHECK_THAT(ui.item("Wall/closing 48 in up").value, Contains("measure again"));
    CHECK_THAT(ui.item("Wall/comes to").value, Contains("stands in up to 4 1/2"));
    ui.click("Wall/Remove row 2");
    ui.settle();
    ui.click("Wall/Put");
    ui.settle();
    REQUIRE(project_in(ui).room.size() == 1);
    const auto& wall = std::get<model::WallProfile>(project_in(ui).room[0].shape);
    REQUIRE(wall.offsets.size() == 3);
    CHECK(wall.offsets[2].inset == "left wall plumb 1 - left wall plumb 3");
    CHECK(ui.shown("left wall plumb 2") == "33");
}

TEST_CASE("surveys fit a small window", "[editor][survey]") {
    for (const char* command : {"room.well_by_tape", "room.wall_by_tape"}) {
        HeadlessUi ui(1280, 720);
        open(ui, command);
        const std::string put =
            command == std::string("room.well_by_tape") ? "Well/Put" : "Wall/Put";
        CHECK(ui.item(put).bottom <= 720.0F);
    }
}
