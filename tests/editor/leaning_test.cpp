// Leaning members in the window: made, listed, chosen, changed and taken out, and how they stand in
// the other places.
#include "editor/command_line.h"
#include "editor/desk_files.h"
#include "editor/frame_nodes.h"
#include "editor/joint_list.h"
#include "editor/keys.h"
#include "editor/node_bars.h"
#include "editor/places/joint_choice.h"
#include "engine/render/camera.h"

#include "tests/editor/headless_ui.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>

using Catch::Contains;
using tests::HeadlessUi;
namespace fs = std::filesystem;
namespace key = editor::key;

namespace {

const fs::path locker = fs::path(BARWRIGHT_SAMPLES) / "leaning_locker.json";

void open_locker(HeadlessUi& ui) {
    REQUIRE(editor::open_file(ui.desk, locker));
    ui.settle();
}

const model::Frame& frame_of(HeadlessUi& ui) { return ui.now().project->frames.front(); }

const std::vector<model::Leaning>& leaning_of(HeadlessUi& ui) { return frame_of(ui).leaning; }

model::Subject subject_of(HeadlessUi& ui, const std::string& name) {
    return {model::SubjectKind::leaning, frame_of(ui).name, name};
}

std::optional<model::Index> piece_of(HeadlessUi& ui, const std::string& name) {
    return editor::piece_of(*ui.now().project, ui.now().resolved, subject_of(ui, name));
}

bool has_piece(const editor::Selection& selection, const std::string& what) {
    return std::any_of(selection.pieces.begin(), selection.pieces.end(),
                       [&](const editor::PieceName& name) { return name.what == what; });
}

void open_new(HeadlessUi& ui) {
    ui.click("Lay out/New leaning member in " + frame_of(ui).name);
    ui.settle();
}

void open_lean(HeadlessUi& ui) {
    ui.click("Top/Frame");
    ui.settle();
    ui.click("Top/Frame/frame.lean");
    ui.settle();
}

// The locker with its right post taken out.
void open_with_one_post(HeadlessUi& ui) {
    open_locker(ui);
    ui.click("Lay out/leaning member post back right");
    ui.settle();
    ui.click("Leaning/Remove");
    ui.settle();
    REQUIRE(leaning_of(ui).size() == 1);
}

const editor::MemberJoint* joint_of(const std::vector<editor::MemberJoint>& joints,
                                    std::string_view name) {
    const auto at = std::find_if(joints.begin(), joints.end(), [&](const auto& joint) {
        return joint.name.members[0] == name || joint.name.members[1] == name;
    });
    return at == joints.end() ? nullptr : &*at;
}

// Clicks on the middle of each of its legs, from all sides.
bool is_picked_in_a_view(HeadlessUi& ui, model::Index piece, const std::string& what) {
    using engine::ViewFrom;
    const auto& resolved = ui.now().resolved;
    const auto& it = resolved.pieces[piece];
    for (const auto from : {ViewFrom::corner, ViewFrom::left, ViewFrom::front, ViewFrom::top}) {
        editor::see_from(ui.desk, from);
        ui.settle();
        for (std::size_t leg = 0; leg < 2; ++leg) {
            const auto& box = it.plates[leg].box;
            model::Point middle{};
            for (std::size_t k = 0; k < 3; ++k) middle[k] = (box.lo[k] + box.hi[k]) / 2;
            const auto room = model::to_room(resolved.frames[it.frame], middle);
            const glm::dvec3 mm = glm::dvec3(room[0], room[1], room[2]) / 1.0e6;
            const auto& shown = ui.desk.ui.view;
            const auto pixel = engine::pixel_of(shown.camera, mm, shown.viewport);
            if (!pixel) continue;
            const auto& view = ui.item("View/picture");
            ui.click_at(view.left + static_cast<float>(pixel->x),
                        view.top + static_cast<float>(pixel->y));
            if (has_piece(ui.desk.ui.selection, what)) return true;
        }
    }
    return false;
}

std::string text_of(const fs::path& file) {
    std::ifstream in{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

}  // namespace

TEST_CASE("leaning members are listed with their length and how both ends are cut",
          "[editor][leaning]") {
    HeadlessUi ui;
    open_locker(ui);
    // Leans in 4 1/4 over 48: atan(4.25 / 48) = 5.06 degrees.
    for (const auto* name : {"post back left", "post back right"}) {
        const auto& words = ui.item("Lay out/length of " + std::string(name)).value;
        CHECK_THAT(words, Contains("long, cut 5.1\xC2\xB0 and 5.1\xC2\xB0"));
    }
}

TEST_CASE("a leaning member is removed and comes back in one step", "[editor][leaning]") {
    HeadlessUi ui;
    open_locker(ui);
    const auto before = frame_of(ui);
    ui.click("Lay out/leaning member post back right");
    ui.settle();
    ui.click("Leaning/Remove");
    ui.settle();
    CHECK(leaning_of(ui).size() == 1);
    CHECK(ui.desk.history.undo_label() == "Remove leaning member post back right");
    ui.press('Z', key::left_control);
    ui.settle();
    CHECK(frame_of(ui) == before);
}

TEST_CASE("the second post is proposed on the other side, like the first", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    open_new(ui);
    CHECK_THAT(ui.item("Leaning/comes to").value,
               Contains("long, cut 5.1\xC2\xB0 and 5.1\xC2\xB0, held by "));
    ui.write("Leaning/name", "post back right");
    ui.click("Leaning/Put");
    ui.settle();
    REQUIRE(leaning_of(ui).size() == 2);
    auto mirrored = leaning_of(ui)[0];
    mirrored.name = "post back right";
    mirrored.face = "right";
    CHECK(leaning_of(ui)[1] == mirrored);
    CHECK(ui.desk.history.undo_label() == "Add leaning member post back right");
    CHECK(ui.now().summary.errors == 0);
}

TEST_CASE("the first post is proposed along the back of a side", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    ui.click("Lay out/leaning member post back left");
    ui.settle();
    ui.click("Leaning/Remove");
    ui.settle();
    open_new(ui);
    CHECK(ui.item("Leaning/to the front").value == "chosen");
    ui.click("Leaning/Put");
    ui.settle();
    REQUIRE(leaning_of(ui).size() == 1);
    const auto& post = leaning_of(ui)[0];
    CHECK(post.face == "left");
    CHECK(post.from == editor::NodeName{"back bottom", "bottom"});
    CHECK(post.to == editor::NodeName{"back top", "top"});
    CHECK(post.leg == model::Sense::minus);
    CHECK(post.stock == "angle");
}

TEST_CASE("one step back takes a new leaning member and its new angle out again",
          "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    const auto before = *ui.now().project;
    open_new(ui);
    ui.click("Leaning/bar");
    ui.settle();
    ui.click("Leaning/bar list/angle 3/4 x 3/4 x 1/8");
    ui.settle();
    ui.click("Leaning/Put");
    ui.settle();
    REQUIRE(leaning_of(ui).size() == 2);
    CHECK(ui.now().project->stock.size() == before.stock.size() + 1);
    ui.press('Z', key::left_control);
    ui.settle();
    CHECK(*ui.now().project == before);
}

TEST_CASE("only angle is offered for a leaning member", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    open_new(ui);
    ui.click("Leaning/bar");
    ui.settle();
    int offered = 0;
    for (const auto& [name, item] : ui.items()) {
        if (name.rfind("Leaning/bar list/", 0) != 0) continue;
        CHECK_THAT(name, Contains("angle"));
        ++offered;
    }
    CHECK(offered > 3);
}

TEST_CASE("face, nodes and the way of the leg are chosen, and the leg is turned",
          "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    open_new(ui);
    ui.click("Leaning/to");
    ui.settle();
    ui.click("Leaning/to list/line at shelf 2, shelf 2");
    ui.settle();
    ui.click("Leaning/to the back");
    ui.click("Leaning/Put");
    ui.settle();
    REQUIRE(leaning_of(ui).size() == 2);
    CHECK(leaning_of(ui)[1].to == editor::NodeName{"line at shelf 2", "shelf 2"});
    CHECK(leaning_of(ui)[1].leg == model::Sense::plus);
    ui.click("Lay out/leaning member " + leaning_of(ui)[1].name);
    ui.settle();
    ui.click("Leaning/to the front");
    ui.click("Leaning/Put");
    ui.settle();
    CHECK(leaning_of(ui)[1].leg == model::Sense::minus);
    CHECK(ui.desk.history.undo_label() == "Change leaning member leaning post");
}

TEST_CASE("a leaning member leans the other way along the other corners", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    open_new(ui);
    ui.click("Leaning/Other corners");
    ui.settle();
    ui.click("Leaning/Put");
    ui.settle();
    REQUIRE(leaning_of(ui).size() == 2);
    CHECK(leaning_of(ui)[1].from == editor::NodeName{"back bottom", "top"});
    CHECK(leaning_of(ui)[1].to == editor::NodeName{"back top", "bottom"});
}

TEST_CASE("a name that a brace, a member or a leaning member has is refused", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    open_new(ui);
    ui.write("Leaning/name", "post back left");
    ui.click("Leaning/Put");
    ui.settle();
    CHECK_THAT(ui.item("Leaning/trouble").value, Contains("there is a leaning member"));
    ui.write("Leaning/name", "rail left top");
    ui.click("Leaning/Put");
    ui.settle();
    CHECK_THAT(ui.item("Leaning/trouble").value, Contains("there is a member"));
    CHECK(leaning_of(ui).size() == 1);
}

TEST_CASE("the form says at once what is wrong with a leaning member there", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    open_new(ui);
    ui.click("Leaning/to");
    ui.settle();
    ui.click("Leaning/to list/back bottom, top");
    ui.settle();
    CHECK(ui.has("Leaning/finding does_not_lean"));
    CHECK_FALSE(ui.has("Leaning/comes to"));
}

TEST_CASE("the form tells that a leaning member would stand in the wall", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    // The wall leans in further than the post does.
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetFormula{"gap to wall", "-2"})));
    ui.settle();
    open_new(ui);
    CHECK(ui.has("Leaning/finding inside_obstacle"));
}

TEST_CASE("a leaning member is selected by its length and by what is found of it",
          "[editor][leaning]") {
    HeadlessUi ui;
    open_locker(ui);
    ui.click("Lay out/length of post back left");
    CHECK(has_piece(ui.desk.ui.selection, "leaning member post back left"));
    CHECK(ui.desk.ui.selection.pieces.size() == 1);
    const auto found = editor::selection_of_subjects(*ui.now().project, ui.now().resolved,
                                                     {subject_of(ui, "post back right")});
    REQUIRE(found.pieces.size() == 1);
    CHECK(found.pieces[0].what == "leaning member post back right");
}

TEST_CASE("a click on a finding about a leaning member selects it", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    auto stray = leaning_of(ui)[0];
    stray.name = "stray";
    stray.face = "right";
    stray.leg = model::Sense::plus;
    REQUIRE(editor::submit(ui.desk,
                           editor::change_of(model::PutLeaning{frame_of(ui).name, stray, {}})));
    ui.settle();
    const auto& groups = ui.now().finding_groups;
    const auto at = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
        const auto& concerns = group.concerns;
        return std::find(concerns.begin(), concerns.end(), subject_of(ui, "stray")) !=
               concerns.end();
    });
    REQUIRE(at != groups.end());
    ui.desk.ui.selection = {};
    ui.click("Lay out/finding " + std::to_string(at - groups.begin() + 1));
    CHECK(has_piece(ui.desk.ui.selection, "leaning member stray"));
}

TEST_CASE("a click in the view selects a leaning member", "[editor][leaning][view]") {
    HeadlessUi ui;
    open_locker(ui);
    // Nothing of the room in front of it.
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::RemoveObstacle{"left wall"})));
    ui.settle();
    const auto piece = piece_of(ui, "post back right");
    REQUIRE(piece);
    CHECK(is_picked_in_a_view(ui, *piece, "leaning member post back right"));
}

TEST_CASE("changing the angle in the list of stock changes leaning members too",
          "[editor][leaning]") {
    HeadlessUi ui;
    open_locker(ui);
    ui.click("Lay out/stock " + frame_of(ui).name + " angle");
    ui.settle();
    ui.type("angle 1 1/4 x 1 1/4 x 1/8");
    ui.press(key::enter);
    ui.settle();
    const auto& stock = leaning_of(ui)[0].stock;
    CHECK(stock != "angle");
    CHECK(leaning_of(ui)[1].stock == stock);
    for (const auto& member : frame_of(ui).members) CHECK(member.stock == stock);
    ui.press('Z', key::left_control);
    ui.settle();
    CHECK(leaning_of(ui)[0].stock == "angle");
}

TEST_CASE("the joints of a leaning member are listed and chosen", "[editor][leaning][join]") {
    HeadlessUi ui;
    open_locker(ui);
    const auto joints =
        editor::member_joints(*ui.now().project, ui.now().resolved, ui.now().findings);
    const auto* joint = joint_of(joints, "post back left");
    REQUIRE(joint != nullptr);
    CHECK(joint->node_bar == "leaning member");
    CHECK_THAT(editor::joint_state_words(*joint), Contains("leaning member, "));
    ui.desk.ui.place = editor::Place::join;
    ui.desk.ui.selection =
        editor::selection_of_joint(*ui.now().project, ui.now().resolved, joint->name);
    CHECK(has_piece(ui.desk.ui.selection, "leaning member post back left"));
    ui.settle();
    CHECK_FALSE(ui.has("Join/How they meet"));
    ui.click("Join/Count of the joint");
    ui.settle();
    ui.click("Join/Count of the joint list/1");
    ui.settle();
    REQUIRE(frame_of(ui).joints.size() == 1);
    CHECK(frame_of(ui).joints[0].members == joint->name.members);
    const auto& found = ui.now().findings;
    CHECK(std::none_of(found.begin(), found.end(),
                       [](const model::Finding& it) { return it.code == "no_such_joint"; }));
}

TEST_CASE("the joints of a chosen leaning member come first in the list",
          "[editor][leaning][join]") {
    HeadlessUi ui;
    open_locker(ui);
    const auto& now = ui.now();
    const auto joints = editor::member_joints(*now.project, now.resolved, now.findings);
    const auto selection =
        editor::selection_of(*now.project, now.resolved, {*piece_of(ui, "post back left")});
    const auto order = editor::joint_order(joints, selection);
    REQUIRE(order.of_chosen > 0);
    CHECK(joints[order.joints.front()].node_bar == "leaning member");
}

TEST_CASE("the piece of a leaning member tells how both its ends are cut",
          "[editor][leaning][make]") {
    HeadlessUi ui;
    open_locker(ui);
    ui.click("Lay out/length of post back left");
    ui.desk.ui.place = editor::Place::make;
    ui.settle();
    for (const auto* end : {"Piece/datum end", "Piece/far end"}) {
        CHECK_THAT(ui.item(end).value, Contains("mitre 5.1 deg across leg a"));
    }
}

TEST_CASE("the cut list says how far the saw is turned for a leaning member",
          "[editor][leaning][make]") {
    HeadlessUi ui;
    open_locker(ui);
    ui.desk.ui.place = editor::Place::make;
    ui.settle();
    const auto& items = ui.items();
    CHECK(std::any_of(items.begin(), items.end(), [](const auto& named) {
        return named.second.value == "angle 1 x 1 x 1/8, mitred 5.1\xC2\xB0";
    }));
}

TEST_CASE("the window writes the same schedules of leaning members as the command line",
          "[editor][leaning][make]") {
    const tests::ScratchFolder scratch{"leaning_schedules"};
    const auto by_window = scratch.path / "window";
    const auto by_command = scratch.path / "command";
    fs::create_directories(by_window);
    HeadlessUi ui;
    open_locker(ui);
    REQUIRE(editor::export_to(ui.desk, by_window));
    std::ostringstream out;
    std::ostringstream err;
    CHECK(editor::run_command_line({"schedule", locker.string(), "--out", by_command.string()}, out,
                                   err) == 0);
    int files = 0;
    for (const auto& entry : fs::directory_iterator(by_command)) {
        CAPTURE(entry.path().filename());
        CHECK(text_of(by_window / entry.path().filename()) == text_of(entry.path()));
        ++files;
    }
    CHECK(files > 4);
    // And the rows are there.
    const auto cuts = text_of(by_window / "cut.csv");
    CHECK_THAT(cuts, Contains("leaning member post back left"));
    CHECK_THAT(cuts, Contains("mitre 5.1 deg across leg a"));
    const auto& mark = ui.now().resolved.marks[ui.now()
                                                   .resolved
                                                   .pieces[*piece_of(ui,
                                                                     "post back "
                                                                     "left")]
                                                   .mark];
    CHECK_THAT(text_of(by_window / "drill.csv"), Contains("\n" + mark.name + ","));
}

TEST_CASE("a frame leans with a wall by the menu, in one step", "[editor][leaning]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::submit(ui.desk,
                           editor::change_of(model::PutObstacle{
                               {.name = "right wall",
                                .shape = model::WallProfile{.at = "50",
                                                            .inside = model::Sense::minus,
                                                            .from = "-10",
                                                            .to = "60",
                                                            .offsets = {{"0", "0"}, {"48", "4"}}}},
                               {}})));
    ui.settle();
    const auto before = *ui.now().project;
    open_lean(ui);
    CHECK_THAT(ui.item("Lean/comes to").value, Contains("2 leaning members more"));
    ui.click("Lean/Put");
    ui.settle();
    REQUIRE(leaning_of(ui).size() == 2);
    CHECK(leaning_of(ui)[0].name == "post front right");
    CHECK(ui.desk.history.undo_label() == "Lean " + frame_of(ui).name + " with right wall");
    CHECK(ui.now().summary.errors == 0);
    ui.press('Z', key::left_control);
    ui.settle();
    CHECK(*ui.now().project == before);
}

TEST_CASE("a side that leans already is refused with the reason", "[editor][leaning]") {
    HeadlessUi ui;
    open_with_one_post(ui);
    open_lean(ui);
    CHECK_THAT(ui.item("Lean/trouble").value, Contains("leans on that side already"));
    ui.press(key::escape);
    CHECK_FALSE(ui.has("Lean/trouble"));
}
