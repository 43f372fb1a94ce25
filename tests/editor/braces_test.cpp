#include "editor/frame_nodes.h"
#include "editor/joint_list.h"
#include "editor/keys.h"
#include "editor/node_bars.h"
#include "editor/places/joint_choice.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Contains;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

const model::Frame& frame_of(HeadlessUi& ui) { return ui.now().project->frames.front(); }

void open_new_brace(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Lay out/New brace in " + frame_of(ui).name);
    ui.settle();
}

// Across the back, as the form proposes it.
void add_brace(HeadlessUi& ui) {
    open_new_brace(ui);
    ui.click("Brace/Put");
    ui.settle();
    REQUIRE(frame_of(ui).diagonals.size() == 1);
}

std::optional<model::Index> piece_of(HeadlessUi& ui, const std::string& name) {
    return editor::piece_of(*ui.now().project, ui.now().resolved,
                            {model::SubjectKind::diagonal, frame_of(ui).name, name});
}

void select_members(HeadlessUi& ui, const std::vector<std::string>& names) {
    ui.desk.ui.selection = {};
    for (const auto& name : names) {
        ui.desk.ui.selection.pieces.push_back({frame_of(ui).name, name});
    }
    ui.settle();
}

bool has_piece(const editor::Selection& selection, const std::string& what) {
    return std::any_of(selection.pieces.begin(), selection.pieces.end(),
                       [&](const editor::PieceName& name) { return name.what == what; });
}

}  // namespace

TEST_CASE("a brace is put across the back with the mouse, and its flat bar with it",
          "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    const auto stocks = ui.now().project->stock.size();
    CHECK_THAT(ui.item("Brace/comes to").value, Contains("long, held by "));
    ui.write("Brace/name", "rear brace");
    ui.click("Brace/Put");
    ui.settle();
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    const auto& brace = frame_of(ui).diagonals[0];
    CHECK(brace.name == "rear brace");
    CHECK(brace.face == "back");
    CHECK(brace.from == editor::NodeName{"left", "bottom"});
    CHECK(brace.to == editor::NodeName{"right", "top"});
    CHECK(brace.stock == "flat 1 x 1/8");
    CHECK(ui.now().project->stock.size() == stocks + 1);
    REQUIRE(piece_of(ui, "rear brace"));
    CHECK_THAT(ui.item("Lay out/length of rear brace").value, Contains("long"));
    CHECK_FALSE(ui.has("Brace/name"));
}

TEST_CASE("one step back takes the brace and its flat bar out again", "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    const auto stocks = ui.now().project->stock.size();
    ui.click("Brace/Put");
    ui.settle();
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    ui.press('Z', key::left_control);
    ui.settle();
    CHECK(frame_of(ui).diagonals.empty());
    CHECK(ui.now().project->stock.size() == stocks);
}

TEST_CASE("Enter puts the brace and Escape leaves all as it was", "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    ui.press(key::escape);
    CHECK_FALSE(ui.has("Brace/name"));
    CHECK(frame_of(ui).diagonals.empty());
    ui.click("Lay out/New brace in " + frame_of(ui).name);
    ui.settle();
    ui.press('A', key::left_control);  // the name has the focus
    ui.type("stay");
    ui.press(key::enter);
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    CHECK(frame_of(ui).diagonals[0].name == "stay");
}

TEST_CASE("Escape closes an open list of the form and not the form", "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    ui.click("Brace/from");
    ui.settle();
    REQUIRE(ui.has("Brace/from list/right, bottom"));
    ui.press(key::escape);
    CHECK_FALSE(ui.has("Brace/from list/right, bottom"));
    CHECK(ui.has("Brace/name"));
}

TEST_CASE("face, nodes, bar, side and ends are chosen", "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    ui.click("Brace/face");
    ui.settle();
    ui.click("Brace/face list/left");
    ui.settle();
    ui.click("Brace/from");
    ui.settle();
    ui.click("Brace/from list/front, top");
    ui.settle();
    ui.click("Brace/to");
    ui.settle();
    ui.click("Brace/to list/back, bottom");
    ui.settle();
    ui.click("Brace/bar");
    ui.settle();
    ui.click("Brace/bar list/flat 3/4 x 1/8");
    ui.settle();
    ui.click("Brace/inside them");
    ui.click("Brace/square");
    ui.click("Brace/Put");
    ui.settle();
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    const auto& brace = frame_of(ui).diagonals[0];
    CHECK(brace.face == "left");
    CHECK(brace.from == editor::NodeName{"front", "top"});
    CHECK(brace.to == editor::NodeName{"back", "bottom"});
    CHECK(brace.stock == "flat 3/4 x 1/8");
    CHECK(brace.side == model::FaceSide::inside);
    CHECK(brace.ends == model::BraceEnds::square);
}

TEST_CASE("only flat bar is offered for a brace", "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    ui.click("Brace/bar");
    ui.settle();
    REQUIRE(ui.has("Brace/bar list/flat 3/4 x 1/8"));
    for (const auto& [name, item] : ui.items()) {
        if (name.rfind("Brace/bar list/", 0) != 0) continue;
        CHECK_THAT(name, Contains("list/flat "));
    }
}

TEST_CASE("a brace leans the other way, and a second one crosses the first", "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    ui.click("Brace/Other corners");
    ui.settle();
    ui.click("Brace/Put");
    ui.settle();
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    CHECK(frame_of(ui).diagonals[0].from == editor::NodeName{"left", "top"});
    CHECK(frame_of(ui).diagonals[0].to == editor::NodeName{"right", "bottom"});
    auto stated = frame_of(ui).diagonals[0];
    editor::turn_to_other_corners(stated.from, stated.to);
    REQUIRE(editor::submit(ui.desk,
                           editor::change_of(model::PutDiagonal{frame_of(ui).name, stated, {}})));
    ui.settle();
    ui.click("Lay out/New brace in " + frame_of(ui).name);
    ui.settle();
    CHECK(ui.item("Brace/name").value == "brace 2");
    ui.click("Brace/Put");
    ui.settle();
    REQUIRE(frame_of(ui).diagonals.size() == 2);
    CHECK(frame_of(ui).diagonals[1].from == editor::NodeName{"left", "top"});
}

TEST_CASE("a new brace begins at the corners of the two chosen members", "[editor][braces]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    select_members(ui, {"post front left", "rail front bottom"});
    ui.click("Lay out/New brace in " + frame_of(ui).name);
    ui.settle();
    ui.click("Brace/Put");
    ui.settle();
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    CHECK(frame_of(ui).diagonals[0].face == "front");
    CHECK(frame_of(ui).diagonals[0].from == editor::NodeName{"left", "top"});
    CHECK(frame_of(ui).diagonals[0].to == editor::NodeName{"right", "bottom"});
}

TEST_CASE("between two parallel members a brace runs from one's beginning to the other's end",
          "[editor][braces]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto& members = frame_of(ui).members;
    const auto named = [&](const char* name) {
        return *std::find_if(members.begin(), members.end(),
                             [&](const model::Member& member) { return member.name == name; });
    };
    const auto pair =
        editor::between_members(frame_of(ui), named("post front right"), named("post back right"));
    REQUIRE(pair);
    CHECK(pair->face == "right");
    CHECK(pair->from == editor::NodeName{"front", "bottom"});
    CHECK(pair->to == editor::NodeName{"back", "top"});
    CHECK_FALSE(
        editor::between_members(frame_of(ui), named("post front left"), named("post back right")));
}

TEST_CASE("a name that a member has is refused, and what was chosen stays", "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    ui.click("Brace/square");
    ui.write("Brace/name", "post front left");
    ui.click("Brace/Put");
    ui.settle();
    CHECK(frame_of(ui).diagonals.empty());
    CHECK_THAT(ui.item("Brace/trouble").value, Contains("there is a member"));
    CHECK(ui.item("Brace/name").value == "post front left");
    CHECK(ui.item("Brace/square").value == "chosen");
}

TEST_CASE("the form says at once what is wrong with a brace between these nodes",
          "[editor][braces]") {
    HeadlessUi ui;
    open_new_brace(ui);
    ui.click("Brace/to");
    ui.settle();
    ui.click("Brace/to list/left, bottom");
    ui.settle();
    CHECK(ui.has("Brace/finding no_length"));
    CHECK_FALSE(ui.has("Brace/comes to"));
    ui.click("Brace/to");
    ui.settle();
    ui.click("Brace/to list/right, top");
    ui.settle();
    CHECK_FALSE(ui.has("Brace/finding no_length"));
    CHECK(ui.has("Brace/comes to"));
}

TEST_CASE("a brace is changed and removed from its form", "[editor][braces]") {
    HeadlessUi ui;
    add_brace(ui);
    ui.click("Lay out/brace brace");
    ui.settle();
    ui.write("Brace/name", "stay");
    ui.click("Brace/Put");
    ui.settle();
    REQUIRE(frame_of(ui).diagonals.size() == 1);
    CHECK(frame_of(ui).diagonals[0].name == "stay");
    ui.click("Lay out/brace stay");
    ui.settle();
    ui.click("Brace/Remove");
    ui.settle();
    CHECK(frame_of(ui).diagonals.empty());
}

TEST_CASE("a brace is selected by its length and by what is found of it", "[editor][braces]") {
    HeadlessUi ui;
    add_brace(ui);
    ui.click("Lay out/length of brace");
    CHECK(has_piece(ui.desk.ui.selection, "brace brace"));
    ui.desk.ui.selection = {};
    // A sheet over the same face is in the same place.
    model::Panel panel{.name = "rear", .bay = frame_of(ui).bays.front().name};
    panel.face_side = model::Sense::plus;
    panel.material = "5052-H32";
    panel.thickness = "1/8 in";
    REQUIRE(
        editor::submit(ui.desk, editor::change_of(model::PutPanel{frame_of(ui).name, panel, {}})));
    ui.settle();
    const auto& findings = ui.now().findings;
    const auto at = std::find_if(findings.begin(), findings.end(), [](const model::Finding& it) {
        return it.code == "interference";
    });
    REQUIRE(at != findings.end());
    CHECK(ui.item("Lay out/of brace: interference").value == at->what);
    const auto selection =
        editor::selection_of_subjects(*ui.now().project, ui.now().resolved, at->concerns);
    CHECK(has_piece(selection, "brace brace"));
}

TEST_CASE("changing the flat bar in the list of stock changes the braces and no member",
          "[editor][braces]") {
    HeadlessUi ui;
    add_brace(ui);
    const auto members = frame_of(ui).members;
    ui.click("Lay out/stock " + frame_of(ui).name + " flat 1 x 1/8");
    ui.settle();
    ui.type("flat 3/4 x 1/8");
    ui.press(key::enter);
    ui.settle();
    CHECK(frame_of(ui).diagonals[0].stock == "flat 3/4 x 1/8");
    CHECK(frame_of(ui).members == members);
}

TEST_CASE("the joints of a brace are there to be chosen, with the choices that apply",
          "[editor][braces][join]") {
    HeadlessUi ui;
    add_brace(ui);
    const auto joints =
        editor::member_joints(*ui.now().project, ui.now().resolved, ui.now().findings);
    const auto at = std::find_if(joints.begin(), joints.end(), [](const editor::MemberJoint& it) {
        return it.node_bar == "brace";
    });
    REQUIRE(at != joints.end());
    ui.desk.ui.place = editor::Place::join;
    ui.desk.ui.selection =
        editor::selection_of_joint(*ui.now().project, ui.now().resolved, at->name);
    CHECK(has_piece(ui.desk.ui.selection, "brace brace"));
    ui.settle();
    CHECK_FALSE(ui.has("Join/How they meet"));
    ui.click("Join/Count of the joint");
    ui.settle();
    ui.click("Join/Count of the joint list/1");
    ui.settle();
    REQUIRE(frame_of(ui).joints.size() == 1);
    CHECK(frame_of(ui).joints[0].members == at->name.members);
    CHECK(frame_of(ui).joints[0].count == 1);
    CHECK_FALSE(frame_of(ui).joints[0].recipe);
    const auto& found = ui.now().findings;
    CHECK(std::none_of(found.begin(), found.end(),
                       [](const model::Finding& it) { return it.code == "no_such_joint"; }));
}

TEST_CASE("a brace and a member that are both chosen are their joint", "[editor][braces][join]") {
    HeadlessUi ui;
    add_brace(ui);
    const auto& now = ui.now();
    const auto joints = editor::member_joints(*now.project, now.resolved, now.findings);
    const auto at = std::find_if(joints.begin(), joints.end(), [](const editor::MemberJoint& it) {
        return it.node_bar == "brace";
    });
    REQUIRE(at != joints.end());
    const auto& names = at->name.members;
    const auto piece = piece_of(ui, "brace");
    REQUIRE(piece);
    auto selection = editor::selection_of(*now.project, now.resolved, {*piece});
    selection.pieces.push_back({frame_of(ui).name, names[0] == "brace" ? names[1] : names[0]});
    const auto chosen = editor::chosen_joint(*now.project, now.resolved, joints, selection);
    REQUIRE(chosen);
    CHECK(*chosen == at->name);
}

TEST_CASE("the joints of a chosen brace come first in the list", "[editor][braces][join]") {
    HeadlessUi ui;
    add_brace(ui);
    const auto& now = ui.now();
    const auto joints = editor::member_joints(*now.project, now.resolved, now.findings);
    const auto selection =
        editor::selection_of(*now.project, now.resolved, {*piece_of(ui, "brace")});
    const auto order = editor::joint_order(joints, selection);
    REQUIRE(order.of_chosen > 0);
    CHECK(joints[order.joints.front()].node_bar == "brace");
}
