// Several joints chosen at once at the Join place, and what is then done to all of them.
#include "editor/joint_group.h"

#include "editor/commands.h"
#include "editor/join_choices.h"
#include "editor/keys.h"
#include "editor/places/section_choice.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

using editor::JointName;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

const model::Project& project_in(HeadlessUi& ui) { return editor::project_of(ui.desk); }

std::vector<editor::MemberJoint> joints_of(HeadlessUi& ui) {
    const auto& now = ui.now();
    return editor::member_joints(*now.project, now.resolved, now.findings);
}

std::vector<JointName> chosen_in(HeadlessUi& ui) {
    const auto& now = ui.now();
    return editor::chosen_joints(*now.project, now.resolved, joints_of(ui), ui.desk.ui.selection);
}

void start_box_at_join(HeadlessUi& ui) {
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "place.join");
    ui.settle();
}

std::string row_of(const JointName& joint) {
    return "Join/Joint list/" + joint.frame + ": " + editor::words_of(joint);
}

// The names in the order of the list, as it stands.
std::vector<JointName> listed(HeadlessUi& ui) {
    std::vector<JointName> names;
    const auto joints = joints_of(ui);
    for (const auto i : ui.desk.ui.join.listing.order.joints) names.push_back(joints[i].name);
    return names;
}

void click_with(HeadlessUi& ui, const JointName& joint, int modifier) {
    ui.drag(row_of(joint), 0, 0, 0, modifier);
}

void choose_all_like_the_first(HeadlessUi& ui) {
    ui.click(row_of(listed(ui).front()));
    ui.click("Join/All like this one");
}

std::size_t stated_with(HeadlessUi& ui, const std::string& recipe) {
    const auto& stated = project_in(ui).frames[0].joints;
    return static_cast<std::size_t>(std::ranges::count_if(
        stated, [&](const model::JointOverride& joint) { return joint.recipe == recipe; }));
}

}  // namespace

TEST_CASE("with Ctrl one joint after the other is chosen, and left out again",
          "[editor][joint group]") {
    HeadlessUi ui;
    start_box_at_join(ui);
    const auto names = listed(ui);
    click_with(ui, names[2], key::left_control);
    CHECK(chosen_in(ui) == std::vector{names[2]});
    REQUIRE(ui.has(row_of(names[0])));  // the list stays open
    click_with(ui, names[0], key::left_control);
    click_with(ui, names[5], key::left_control);
    CHECK(chosen_in(ui) == std::vector{names[2], names[0], names[5]});
    CHECK(listed(ui) == names);  // and keeps its order under the hand
    click_with(ui, names[0], key::left_control);
    CHECK(chosen_in(ui) == std::vector{names[2], names[5]});
}

TEST_CASE("with Shift all joints from the one before to this one are chosen",
          "[editor][joint group]") {
    HeadlessUi ui;
    start_box_at_join(ui);
    const auto names = listed(ui);
    click_with(ui, names[1], key::left_control);
    click_with(ui, names[4], key::left_shift);
    CHECK(chosen_in(ui) == std::vector(names.begin() + 1, names.begin() + 5));
    click_with(ui, names[0], key::left_shift);  // from the same one, the other way
    CHECK(chosen_in(ui) == std::vector(names.begin(), names.begin() + 2));
}

TEST_CASE("all joints like one are those of the same recipe and the same two stocks",
          "[editor][joint group]") {
    HeadlessUi ui;
    start_box_at_join(ui);
    auto project = project_in(ui);
    auto other = project.stock[0];
    other.name = "another";
    project.stock.push_back(other);
    auto& members = project.frames[0].members;
    members.back().stock = "another";
    editor::replace_project(ui.desk, project, {});
    ui.settle();
    const auto joints = joints_of(ui);
    const auto is_of_another = [&](const JointName& joint) {
        return joint.members[0] == members.back().name || joint.members[1] == members.back().name;
    };
    const auto at =
        std::ranges::find_if(joints, [&](const auto& joint) { return !is_of_another(joint.name); });
    REQUIRE(at != joints.end());
    const auto alike = editor::joints_like(project, joints, at->name);
    CHECK(alike.size() > 4);
    CHECK(alike.size() < joints.size());
    for (const auto& joint : joints) {
        INFO(editor::words_of(joint.name));
        const bool is_alike = std::ranges::find(alike, joint.name) != alike.end();
        CHECK(is_alike == (!is_of_another(joint.name) && joint.recipe == at->recipe));
    }
}

TEST_CASE("a recipe is chosen for all joints that are chosen, in one step",
          "[editor][joint group]") {
    HeadlessUi ui;
    start_box_at_join(ui);
    const auto before = ui.desk.history.now();
    choose_all_like_the_first(ui);
    const auto chosen = chosen_in(ui);
    REQUIRE(chosen.size() > 8);
    ui.click("Join/meet: corner cleat");
    CHECK(stated_with(ui, "corner cleat") == chosen.size());
    CHECK(chosen_in(ui) == chosen);  // and stay chosen
    CHECK_THAT(ui.item("Join/meet: corner cleat").value, Catch::StartsWith("now: "));
    ui.press('Z', key::left_control);
    CHECK(project_in(ui) == *before);
}

TEST_CASE("fastener, number and hold are set for all joints that are chosen, each in one step",
          "[editor][joint group]") {
    HeadlessUi ui;
    start_box_at_join(ui);
    const auto before = ui.desk.history.now();
    choose_all_like_the_first(ui);
    const auto chosen = chosen_in(ui);
    ui.click("Join/What holds them");
    ui.click("Join/Fastener of the joint");
    ui.click("Join/Fastener of the joint list/blind rivet 3/32");
    ui.click("Join/Count of the joint");
    ui.click("Join/Count of the joint list/1");
    ui.click("Join/hold: comes apart, nuts");
    for (const auto& joint : chosen) {
        const auto entry = editor::joint_entry(project_in(ui), joint);
        CHECK(entry.fastener == "blind rivet 3/32");
        CHECK(entry.count == 1);
        CHECK(entry.screw_hold == model::ScrewHold::nut);
    }
    for (int i = 0; i < 3; ++i) ui.press('Z', key::left_control);
    CHECK(project_in(ui) == *before);
}

TEST_CASE("where the chosen joints differ the lists say so, and a choice makes them alike",
          "[editor][joint group]") {
    HeadlessUi ui;
    start_box_at_join(ui);
    choose_all_like_the_first(ui);
    const auto chosen = chosen_in(ui);
    auto entry = editor::joint_entry(project_in(ui), chosen[1]);
    entry.count = 3;
    entry.recipe = "flush";
    REQUIRE(editor::submit(
        ui.desk, editor::joint_change(project_in(ui), chosen[1].frame, entry, "Three there")));
    ui.settle();
    REQUIRE(chosen_in(ui).size() == chosen.size());
    CHECK(ui.item("Join/How they meet").value == "not all alike");
    ui.click("Join/What holds them");
    ui.click("Join/Count of the joint");
    ui.click("Join/Count of the joint list/2");
    for (const auto& joint : chosen) CHECK(editor::joint_entry(project_in(ui), joint).count == 2);
    ui.click("Join/How they meet");
    ui.click("Join/meet: as the frame has it");
    CHECK(stated_with(ui, "flush") == 0);
    ui.click("Join/Back to the rule");
    CHECK(project_in(ui).frames[0].joints.empty());
}

TEST_CASE("choosing several joints fits a small window too", "[editor][joint group]") {
    HeadlessUi ui(1280, 720);
    start_box_at_join(ui);
    choose_all_like_the_first(ui);
    CHECK(ui.item("Join/meet: flush").visible);
    ui.click("Join/Joint of choice");
    for (const auto& joint : {listed(ui)[0], listed(ui)[1]})
        CHECK(ui.item(row_of(joint)).value == "chosen");
}

TEST_CASE("what was chosen for a joint and does not suit its new bar is found, with the way to it",
          "[editor][joint group]") {
    HeadlessUi ui;
    start_box_at_join(ui);
    choose_all_like_the_first(ui);
    ui.click("Join/What holds them");
    ui.click("Join/Fastener of the joint");
    ui.click("Join/Fastener of the joint list/blind rivet 3/32");
    const auto joint = chosen_in(ui).front();
    const auto concerns_joint = [&](const model::Finding& finding) {
        const bool is_open = finding.severity != model::Severity::note;
        return is_open && std::ranges::find(finding.concerns, editor::subject_of(joint)) !=
                              finding.concerns.end();
    };
    CHECK(std::ranges::none_of(ui.now().findings, concerns_joint));
    std::vector<std::string> members;
    for (const auto& member : project_in(ui).frames[0].members) members.push_back(member.name);
    const auto thicker = editor::section_change(ui.now(), *ui.desk.catalogue, joint.frame, members,
                                                "angle 1 x 1 x 1/4");
    REQUIRE(editor::submit(ui.desk, thicker));
    ui.settle();
    CHECK(editor::joint_entry(project_in(ui), joint).fastener == "blind rivet 3/32");
    CHECK(std::ranges::any_of(ui.now().findings, concerns_joint));
    const auto& groups = ui.now().finding_groups;
    const auto about = std::ranges::find_if(groups, [&](const auto& group) {
        const auto& finding = ui.now().findings[group.findings[0]];
        return finding.severity != model::Severity::note &&
               std::ranges::find(group.concerns, editor::subject_of(joint)) != group.concerns.end();
    });
    REQUIRE(about != groups.end());
    const auto number = about - groups.begin() + 1;
    for (std::ptrdiff_t i = 0; i < number; ++i) {
        editor::run_command(ui.desk, "edit.next_finding");
        ui.settle();
    }
    const auto card = "Lay out/finding " + std::to_string(number);
    CHECK(ui.has(card + " why"));
    CHECK(ui.has(card + " door 1"));  // to the joint's own fastener
}
