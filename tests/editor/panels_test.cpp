#include "editor/keys.h"
#include "editor/panel_facts.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Contains;
using tests::HeadlessUi;
namespace key = editor::key;
using namespace engine::literals;

namespace {

const model::Frame& frame_of(HeadlessUi& ui) { return ui.now().project->frames.front(); }

void open_new_panel(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Lay out/New panel in " + frame_of(ui).name);
    ui.settle();
}

// A sheet on the back of the first bay, put there by mouse and keys.
void add_back(HeadlessUi& ui) {
    open_new_panel(ui);
    ui.write("Panel/name", "rear");
    ui.click("Panel/back");
    ui.click("Panel/Put");
    ui.settle();
    REQUIRE(frame_of(ui).panels.size() == 1);
}

std::size_t cut_outs_in_sheet(HeadlessUi& ui, const std::string& panel) {
    const auto piece = editor::panel_piece(ui.now(), frame_of(ui).name, panel);
    REQUIRE(piece);
    const auto& resolved = ui.now().resolved;
    const auto outline = resolved.pieces[*piece].plates[0].outline;
    return outline == model::no_index ? 0 : resolved.outlines[outline].cut_outs.size();
}

}  // namespace

TEST_CASE("a panel is put on a bay with the mouse and is a piece to cut", "[editor][panels]") {
    HeadlessUi ui;
    add_back(ui);
    const auto& panel = frame_of(ui).panels.front();
    CHECK(panel.name == "rear");
    CHECK(panel.face_axis == model::Axis::y);
    CHECK(panel.face_side == model::Sense::plus);
    CHECK(panel.bay == frame_of(ui).bays.front().name);
    CHECK(editor::panel_piece(ui.now(), frame_of(ui).name, "rear"));
    CHECK_THAT(ui.item("Lay out/size of rear").value, Contains(" x "));
    CHECK_FALSE(ui.has("Panel/name"));
}

TEST_CASE("an intake is sized and cut into the panel, and undo takes it out",
          "[editor][panels][vent]") {
    HeadlessUi ui;
    add_back(ui);
    ui.click("Lay out/vents of rear");
    ui.settle();
    // By hand: 4 in round is 12.566 in2; / 0.75 is 16.755 in2; / (2 x 2 in) is 4.189 in: 4 7/32.
    ui.write("Vents/diameter", "4 in");
    ui.settle();
    CHECK_THAT(ui.item("Vents/each").value, Contains("4 7/32"));
    CHECK_THAT(ui.item("Vents/needed").value, Contains("12.6 sq in"));
    CHECK_THAT(ui.item("Vents/needed").value, Contains("16.8 sq in"));
    ui.click("Vents/Put");
    ui.settle();
    REQUIRE(frame_of(ui).panels.front().cut_outs.size() == 2);
    CHECK(frame_of(ui).panels.front().cut_outs[1].name == "intake 2");
    CHECK(cut_outs_in_sheet(ui, "rear") == 2);
    ui.press('Z', key::left_control);
    ui.settle();
    CHECK(frame_of(ui).panels.front().cut_outs.empty());
    CHECK(cut_outs_in_sheet(ui, "rear") == 0);
}

TEST_CASE("the intake follows each key, and the cover that is chosen", "[editor][panels][vent]") {
    HeadlessUi ui;
    add_back(ui);
    ui.click("Lay out/vents of rear");
    ui.settle();
    // By hand: 12.566 in2 over 2 openings of 3 in: 12.566 / 6 = 2.094, so 2 1/8 in.
    ui.click("Vents/intake cover");
    ui.settle();
    ui.click("Vents/intake cover list/open hole: passes 100 %");
    ui.write("Vents/height of each", "3");
    ui.settle();
    CHECK_THAT(ui.item("Vents/each").value, Contains("2 1/8"));
}

TEST_CASE("openings that the panel cannot hold are not put in, and it says why",
          "[editor][panels][vent]") {
    HeadlessUi ui;
    add_back(ui);
    ui.click("Lay out/vents of rear");
    ui.settle();
    ui.write("Vents/height of each", "200");
    ui.settle();
    CHECK_THAT(ui.item("Vents/trouble").value, Contains("larger than the panel"));
    CHECK_FALSE(ui.item("Vents/Put").enabled);
    ui.write("Vents/height of each", "2 + ?");
    ui.settle();
    CHECK_THAT(ui.item("Vents/trouble").value, Contains("height of each: behind `2 + `"));
    CHECK(ui.item("Vents/height of each").value == "2 + ?");
}

TEST_CASE("openings where another cut-out is are not put in, and can be moved",
          "[editor][panels][vent]") {
    HeadlessUi ui;
    add_back(ui);
    auto panel = frame_of(ui).panels.front();
    panel.cut_outs = {{.name = "cable", .least = {"3", "3"}, .most = {"6", "5"}}};
    REQUIRE(
        editor::submit(ui.desk, editor::change_of(model::PutPanel{frame_of(ui).name, panel, {}})));
    ui.settle();
    ui.click("Lay out/vents of rear");
    ui.settle();
    ui.write("Vents/from left", "3");
    ui.write("Vents/from foot", "4");
    ui.click("Vents/Put");
    ui.settle();
    CHECK_THAT(ui.item("Vents/refused").value, Contains("intake 1"));
    CHECK(frame_of(ui).panels.front().cut_outs.size() == 1);
    ui.write("Vents/from foot", "6");
    CHECK_FALSE(ui.has("Vents/refused"));
    ui.click("Vents/Put");
    ui.settle();
    CHECK(frame_of(ui).panels.front().cut_outs.size() == 3);
}

TEST_CASE("a thickness that cannot be read keeps the form and its text", "[editor][panels]") {
    HeadlessUi ui;
    open_new_panel(ui);
    ui.write("Panel/thickness", "1/8 in + ?");
    ui.click("Panel/Put");
    ui.settle();
    CHECK(frame_of(ui).panels.empty());
    CHECK_THAT(ui.item("Panel/trouble").value, Contains("thickness: behind `1/8 in + `"));
    CHECK(ui.item("Panel/thickness").value == "1/8 in + ?");
}

TEST_CASE("sheet without thickness and rivets without pitch are refused", "[editor][panels]") {
    HeadlessUi ui;
    open_new_panel(ui);
    for (const char* text : {"0", "-1", "12 ft"}) {
        ui.write("Panel/thickness", text);
        ui.click("Panel/Put");
        ui.settle();
        CHECK_THAT(ui.item("Panel/trouble").value, Contains("thickness: give "));
    }
    ui.write("Panel/thickness", "1/8");
    ui.write("Panel/pitch", "-3");
    ui.click("Panel/Put");
    ui.settle();
    CHECK_THAT(ui.item("Panel/trouble").value, Contains("pitch: give a length above zero"));
    CHECK(frame_of(ui).panels.empty());
}

TEST_CASE("a panel is no bar", "[editor][panels]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto bar = ui.now().summary.bar;
    ui.click("Lay out/New panel in " + frame_of(ui).name);
    ui.settle();
    ui.click("Panel/Put");
    ui.settle();
    REQUIRE(frame_of(ui).panels.size() == 1);
    CHECK(ui.now().summary.bar == bar);
}

TEST_CASE("a second panel of one name is refused", "[editor][panels]") {
    HeadlessUi ui;
    add_back(ui);
    ui.click("Lay out/New panel in " + frame_of(ui).name);
    ui.settle();
    ui.write("Panel/name", "rear");
    ui.click("Panel/Put");
    ui.settle();
    CHECK_THAT(ui.item("Panel/trouble").value, Contains("already"));
    CHECK(frame_of(ui).panels.size() == 1);
}

TEST_CASE("a door says how wide the way through it is", "[editor][panels]") {
    HeadlessUi ui;
    open_new_panel(ui);
    ui.click("Panel/a door");
    ui.click("Panel/Put");
    ui.settle();
    REQUIRE(frame_of(ui).panels.size() == 1);
    CHECK(frame_of(ui).panels[0].use == model::PanelUse::door);
    CHECK(editor::clear_opening_of(ui.now(), frame_of(ui).name, frame_of(ui).panels[0].name));
    CHECK_THAT(ui.item("Lay out/of " + frame_of(ui).panels[0].name).value,
               Contains("clear opening"));
}

TEST_CASE("a cut-out is typed, moved and taken away again", "[editor][panels]") {
    HeadlessUi ui;
    add_back(ui);
    ui.click("Lay out/panel rear");
    ui.settle();
    ui.click("Panel/New cut-out");
    ui.settle();
    ui.write("Panel/cut-out 1 from 1", "3");
    ui.write("Panel/cut-out 1 from 2", "3 in");
    ui.write("Panel/cut-out 1 to 1", "width / 4");
    ui.write("Panel/cut-out 1 to 2", "5");
    ui.click("Panel/Put");
    ui.settle();
    REQUIRE(frame_of(ui).panels[0].cut_outs.size() == 1);
    CHECK(frame_of(ui).panels[0].cut_outs[0].most[0] == "width / 4");
    CHECK(cut_outs_in_sheet(ui, "rear") == 1);
    ui.click("Lay out/panel rear");
    ui.settle();
    ui.click("Panel/Remove cut-out 1");
    ui.click("Panel/Put");
    ui.settle();
    CHECK(frame_of(ui).panels[0].cut_outs.empty());
}

TEST_CASE("a cut-out without lengths is refused by name", "[editor][panels]") {
    HeadlessUi ui;
    open_new_panel(ui);
    ui.click("Panel/New cut-out");
    ui.settle();
    ui.click("Panel/Put");
    ui.settle();
    CHECK_THAT(ui.item("Panel/trouble").value, Contains("cut-out 1"));
    CHECK(frame_of(ui).panels.empty());
}

TEST_CASE("a panel is removed from its form", "[editor][panels]") {
    HeadlessUi ui;
    add_back(ui);
    ui.click("Lay out/panel rear");
    ui.settle();
    ui.click("Panel/Remove");
    ui.settle();
    CHECK(frame_of(ui).panels.empty());
}

TEST_CASE("the material and the rivet are chosen from the catalogue", "[editor][panels]") {
    HeadlessUi ui;
    open_new_panel(ui);
    ui.click("Panel/material");
    ui.settle();
    ui.click("Panel/material list/birch plywood");
    ui.settle();
    ui.click("Panel/rivet");
    ui.settle();
    ui.click("Panel/rivet list/blind rivet 5/32");
    ui.settle();
    ui.click("Panel/Put");
    ui.settle();
    REQUIRE(frame_of(ui).panels.size() == 1);
    CHECK(frame_of(ui).panels[0].material == "birch plywood");
    CHECK(frame_of(ui).panels[0].fastener == "blind rivet 5/32");
}

TEST_CASE("a cut-out's trouble calls the field as its heading does", "[editor][panels]") {
    HeadlessUi ui;
    open_new_panel(ui);
    ui.click("Panel/New cut-out");
    ui.settle();
    ui.write("Panel/cut-out 1 from 1", "3");
    ui.click("Panel/Put");
    ui.settle();
    CHECK_THAT(ui.item("Panel/trouble").value, Contains("cut-out 1, from, up"));
    ui.click("Panel/top");
    ui.click("Panel/Put");
    ui.settle();
    CHECK_THAT(ui.item("Panel/trouble").value, Contains("cut-out 1, from, deep"));
}

TEST_CASE("openings in a top are deep, not high", "[editor][panels][vent]") {
    HeadlessUi ui;
    open_new_panel(ui);
    ui.write("Panel/name", "lid");
    ui.click("Panel/top");
    ui.click("Panel/Put");
    ui.settle();
    ui.click("Lay out/vents of lid");
    ui.settle();
    CHECK(ui.has("Vents/one behind another"));
    CHECK(ui.has("Vents/from front"));
    CHECK_THAT(ui.item("Vents/each").value, Contains(" wide and 2 in deep"));
    ui.write("Vents/depth of each", "2 + ?");
    ui.settle();
    CHECK_THAT(ui.item("Vents/trouble").value, Contains("depth of each: behind `2 + `"));
}

TEST_CASE("a cut-out that only sounds like an opening is kept, and nothing says it goes",
          "[editor][panels][vent]") {
    HeadlessUi ui;
    add_back(ui);
    auto panel = frame_of(ui).panels.front();
    panel.cut_outs = {{.name = "intake grille", .least = {"3", "3"}, .most = {"6", "5"}}};
    REQUIRE(
        editor::submit(ui.desk, editor::change_of(model::PutPanel{frame_of(ui).name, panel, {}})));
    ui.settle();
    ui.click("Lay out/vents of rear");
    ui.settle();
    CHECK(ui.item("Vents/verb").value == "Put the openings in");
    ui.click("Vents/Put");
    ui.settle();
    REQUIRE(frame_of(ui).panels.front().cut_outs.size() == 3);
    ui.click("Lay out/vents of rear");
    ui.settle();
    CHECK(ui.item("Vents/verb").value == "Replace the openings");
}

TEST_CASE("the form of openings comes back with what it was last sized by, and what is there",
          "[editor][panels][vent]") {
    HeadlessUi ui;
    add_back(ui);
    ui.click("Lay out/vents of rear");
    ui.settle();
    ui.write("Vents/diameter", "3");
    ui.write("Vents/net area", "1.5");
    ui.write("Vents/openings", "3");
    ui.write("Vents/height of each", "1 1/2");
    ui.write("Vents/gap between", "3/4");
    ui.click("Vents/one above another");
    ui.write("Vents/from foot", "2");
    ui.settle();
    CHECK_FALSE(ui.has("Vents/trouble"));
    ui.click("Vents/Put");
    ui.settle();
    const auto before = frame_of(ui).panels.front().cut_outs;
    REQUIRE(before.size() == 3);
    ui.click("Lay out/vents of rear");
    ui.settle();
    CHECK(ui.item("Vents/diameter").value == "3");
    CHECK(ui.item("Vents/net area").value == "1.5");
    CHECK(ui.item("Vents/openings").value == "3");
    CHECK_THAT(ui.item("Vents/height of each").value, Contains("1 1/2"));
    CHECK_THAT(ui.item("Vents/gap between").value, Contains("3/4"));
    CHECK(ui.item("Vents/one above another").value == "chosen");
    CHECK_THAT(ui.item("Vents/from foot").value, Contains("2"));
    CHECK(ui.item("Vents/from left").value.empty());
    ui.click("Vents/Put");
    ui.settle();
    CHECK(frame_of(ui).panels.front().cut_outs == before);
}
