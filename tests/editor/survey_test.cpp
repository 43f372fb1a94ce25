#include "editor/commands.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>

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

// Turns the wheel until it is to be seen.
void reveal(HeadlessUi& ui, const std::string& name) {
    const auto& screen = ImGui::GetIO().DisplaySize;
    ui.move_to(screen.x / 2, screen.y / 2);
    for (int i = 0; i < 60 && !ui.item(name).visible; ++i) {
        ui.input.wheel(0, -1);
        ui.settle();
    }
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
    ui.click("Well/Put");
    ui.settle();
    CHECK(project_in(ui).room.empty());
    CHECK_THAT(ui.item("Well/trouble").value, Contains("red"));
    CHECK_THAT(ui.item("Well/fault of start").value, Contains("give a length"));
    CHECK_FALSE(ui.has("Well/fault of behind"));
    measure_well(ui);
    CHECK_FALSE(ui.has("Well/fault of start"));
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

TEST_CASE("a form that nobody has touched is not wrong yet", "[editor][survey]") {
    HeadlessUi ui;
    for (const char* command : {"room.well_by_tape", "room.wall_by_tape", "room.box"}) {
        INFO(command);
        open(ui, command);
        REQUIRE(editor::is_open(ui.desk.ui.dialog));
        for (const auto& [name, item] : ui.items()) CHECK_THAT(name, !Contains("/fault of "));
        ui.press(key::escape);
    }
}

TEST_CASE("a field that was filled in and is empty again is told", "[editor][survey]") {
    HeadlessUi ui;
    open(ui, "room.well_by_tape");
    ui.write("Well/start", "20 1/2");
    CHECK_FALSE(ui.has("Well/fault of start"));
    ui.write("Well/start", "");
    ui.press(key::backspace);
    CHECK_THAT(ui.item("Well/fault of start").value, Contains("give a length"));
    CHECK_FALSE(ui.has("Well/fault of length"));
    ui.write("Well/length", "long");
    CHECK_THAT(ui.item("Well/fault of length").value, !Contains("give a length"));
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

TEST_CASE("a survey with all that it can tell can be answered in a small window",
          "[editor][survey]") {
    HeadlessUi ui(1024, 640);
    tests::start_box(ui.desk);
    open(ui, "room.well_by_tape");
    for (const auto& [field, text] : {std::pair{"start", "2"},
                                      {"length", "34"},
                                      {"behind", "65 1/2"},
                                      {"room length", "121"},
                                      {"height", "9 1/4"},
                                      {"reach", "8 1/2"},
                                      {"across", "52"},
                                      {"opposite", "8 1/2"},
                                      {"room width", "72"}}) {
        const auto name = std::string("Well/") + field;
        reveal(ui, name);
        ui.write(name, text);
    }
    CHECK(ui.has("Well/closing along the van"));
    CHECK(std::ranges::any_of(
        ui.items(), [](const auto& item) { return item.first.starts_with("Well/finding "); }));
    REQUIRE(std::ranges::any_of(ui.items(), [](const auto& item) {  // else this tells nothing
        return item.first.starts_with("Well/") && !item.second.visible;
    }));
    CHECK(ui.item("Well/Put").bottom < 640.0F);
    ui.click("Well/Put");
    ui.settle();
    REQUIRE(project_in(ui).room.size() == 1);
}

TEST_CASE("a wall survey of many rows can be answered in a small window", "[editor][survey]") {
    HeadlessUi ui(1024, 640);
    open(ui, "room.wall_by_tape");
    auto& survey = std::get<editor::WallSurvey>(ui.desk.ui.dialog);
    survey.line = "40";
    survey.to = "96";
    survey.rows.clear();
    for (int i = 0; i < 20; ++i) {
        survey.rows.push_back({std::to_string(4 * i), std::to_string(40 - i), "30", "75"});
    }
    ui.settle();
    REQUIRE(std::ranges::any_of(ui.items(), [](const auto& item) {
        return item.first.starts_with("Wall/") && !item.second.visible;
    }));
    CHECK(ui.item("Wall/Put").bottom < 640.0F);
    ui.click("Wall/Put");
    ui.settle();
    REQUIRE(project_in(ui).room.size() == 1);
    CHECK(std::get<model::WallProfile>(project_in(ui).room[0].shape).offsets.size() == 20);
}

TEST_CASE("the measures of a survey are one line of the dimensions until they are asked for",
          "[editor][survey]") {
    HeadlessUi ui;
    measure_well(ui);
    ui.press(key::enter);
    editor::run_command(ui.desk, "place.lay_out");
    ui.settle();
    REQUIRE(ui.has("Lay out/measures of near well"));
    CHECK_FALSE(ui.has("Lay out/edit near well length"));
    ui.click("Lay out/measures of near well");
    ui.settle();
    CHECK(ui.has("Lay out/edit near well length"));
    ui.click("Lay out/measures of near well");
    ui.settle();
    CHECK_FALSE(ui.has("Lay out/edit near well length"));
    ui.desk.ui.selection.subjects = {{model::SubjectKind::dimension, {}, "near well length"}};
    ui.settle();
    CHECK(ui.has("Lay out/edit near well length"));  // what is chosen shows
}

TEST_CASE("Tab passes over folded measures, and what is typed keeps them unfolded",
          "[editor][survey]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    measure_well(ui);
    ui.press(key::enter);
    editor::Change change;
    change.edits = {model::PutDimension{{.name = "shelf", .formula = "9"}, {}}};
    REQUIRE(editor::submit(ui.desk, change));
    editor::run_command(ui.desk, "place.lay_out");
    ui.settle();
    ui.click("Lay out/shelf 1");
    ui.settle();
    ui.press(key::tab);
    ui.settle();
    REQUIRE(ui.desk.ui.hand.typed);
    CHECK(ui.desk.ui.hand.typed->dimension == "shelf");
    ui.press(key::escape);
    ui.click("Lay out/measures of near well");
    ui.settle();
    ui.click("Lay out/near well length");
    ui.settle();
    REQUIRE(ui.desk.ui.hand.typed);
    CHECK_FALSE(ui.item("Lay out/measures of near well").enabled);
}

TEST_CASE("a survey of a shape that cannot be is refused with the reason", "[editor][survey]") {
    HeadlessUi ui;
    measure_well(ui);
    ui.write("Well/length", "-31");
    ui.settle();
    ui.click("Well/Put");
    CHECK(project_in(ui).room.empty());
    CHECK_THAT(ui.item("Well/trouble").value, Contains("along Y"));
}

TEST_CASE("the buttons of a long form stay in sight while its fields scroll", "[editor][survey]") {
    HeadlessUi ui(1280, 720);
    open(ui, "room.well_by_tape");
    for (const bool are_faults_told : {false, true}) {
        CAPTURE(are_faults_told);
        for (const char* name : {"Well/Put", "Well/Cancel"}) {
            const auto& button = ui.item(name);
            CHECK(button.visible);
            CHECK(button.bottom < 720.0F);
        }
        ui.click("Well/Put");  // now all that is wanted is told
        ui.settle();
    }
    REQUIRE(ui.has("Well/trouble"));
    ui.click("Well/Cancel");
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("what was said of a form goes when the form is changed", "[editor][survey]") {
    HeadlessUi ui;
    open(ui, "room.well_by_tape");
    ui.click("Well/Put");
    ui.settle();
    REQUIRE(ui.has("Well/trouble"));
    ui.write("Well/start", "12");
    ui.settle();
    CHECK_FALSE(ui.has("Well/trouble"));
}
