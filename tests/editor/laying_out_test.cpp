// Laying out by hand: commands for what is chosen in the view, and their dialogs.
#include "editor/commands.h"
#include "editor/dialogs/frame_form.h"
#include "editor/dialogs/frame_trial.h"
#include "editor/keys.h"
#include "editor/selection.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

using Catch::Contains;
using tests::HeadlessUi;

namespace {

const model::Frame& frame_in(HeadlessUi& ui) { return ui.now().project->frames.front(); }

bool has_member(HeadlessUi& ui, const std::string& name) {
    return std::ranges::count(frame_in(ui).members, name, &model::Member::name) > 0;
}

const model::Member& member(HeadlessUi& ui, const std::string& name) {
    const auto& members = frame_in(ui).members;
    const auto found = std::ranges::find(members, name, &model::Member::name);
    if (found == members.end()) FAIL("there is no member " + name);
    return *found;
}

void choose(HeadlessUi& ui, const std::vector<std::string>& names) {
    ui.desk.ui.selection = {};
    for (const auto& name : names) {
        ui.desk.ui.selection.pieces.push_back({frame_in(ui).name, name, 0});
    }
    ui.settle();
}

void run(HeadlessUi& ui, std::string_view command) {
    editor::run_command(ui.desk, command);
    ui.settle();
}

void put(HeadlessUi& ui, const model::Edit& edit) {
    REQUIRE(editor::submit(ui.desk, editor::change_of(edit)));
    ui.settle();
}

void put_middle(HeadlessUi& ui) {
    put(ui, model::PutPlane{frame_in(ui).name, {"middle", model::Axis::x, "width / 2"}, ""});
}

// Findings of a project in which there is nothing but notes, and of each as many again as in
// groups.
bool has_each_group_twice(HeadlessUi& ui, const std::vector<editor::FindingGroup>& before) {
    const auto& now = ui.now();
    const auto is_note = [](const model::Finding& finding) {
        return finding.severity == model::Severity::note;
    };
    if (!std::ranges::all_of(now.findings, is_note)) return false;
    if (now.finding_groups.size() != before.size()) return false;
    for (std::size_t i = 0; i < before.size(); ++i) {
        if (now.finding_groups[i].findings.size() != 2 * before[i].findings.size()) return false;
    }
    return true;
}

}  // namespace

TEST_CASE("legs of the chosen members are flipped along each axis, in one step",
          "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto before = *ui.now().project;
    choose(ui, {"post front left", "rail front top"});
    run(ui, "edit.flip_x");
    CHECK(member(ui, "post front left").legs[0] == model::Sense::minus);
    run(ui, "edit.flip_y");
    CHECK(member(ui, "post front left").legs[1] == model::Sense::minus);
    CHECK(member(ui, "rail front top").legs[0] == model::Sense::minus);
    run(ui, "edit.flip_z");
    CHECK(member(ui, "rail front top").legs[1] == model::Sense::plus);
    for (int step = 0; step < 3; ++step) run(ui, "edit.undo");
    CHECK(*ui.now().project == before);
}

TEST_CASE("a member with a foot is turned end for end; one with both ends alike is told so",
          "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto post = member(ui, "post front left");
    post.foot_from = true;
    put(ui, model::PutMember{frame_in(ui).name, post, post.name});
    choose(ui, {"post front left"});
    run(ui, "edit.end_for_end");
    CHECK(member(ui, "post front left").foot_to);
    choose(ui, {"post front right"});
    const auto before = *ui.now().project;
    run(ui, "edit.end_for_end");
    CHECK(*ui.now().project == before);
    REQUIRE(ui.desk.ui.notice);
}

TEST_CASE("a member is split at a plane chosen, and its parts are joined again",
          "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put_middle(ui);
    const auto before = *ui.now().project;
    choose(ui, {"rail front top"});
    run(ui, "edit.split");
    CHECK_THAT(ui.item("Split/comes to").value, Contains("1 member more"));
    ui.click("Split/Put");
    ui.settle();
    CHECK(has_member(ui, "rail front top 1"));
    choose(ui, {"rail front top 2", "rail front top 1"});
    run(ui, "edit.join");
    CHECK(*ui.now().project == before);
}

TEST_CASE("a member that no plane parts cannot be split yet", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    choose(ui, {"rail front top"});
    run(ui, "edit.split");
    CHECK_FALSE(ui.item("Split/Put").enabled);
    CHECK_THAT(ui.item("Split/trouble").value, Contains("nowhere to split it"));
}

TEST_CASE("a member is not split at a plane that lies where it ends", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put_middle(ui);
    put(ui, model::PutPlane{frame_in(ui).name, {"far side", model::Axis::x, "width"}, ""});
    put(ui, model::PutPlane{frame_in(ui).name, {"near side", model::Axis::x, "0 in"}, ""});
    choose(ui, {"rail front top"});
    run(ui, "edit.split");
    CHECK(ui.has("Split/at/middle"));
    CHECK_FALSE(ui.has("Split/at/far side"));
    CHECK_FALSE(ui.has("Split/at/near side"));
    CHECK(std::get<editor::SplitForm>(ui.desk.ui.dialog).plane == "middle");
}

TEST_CASE("only two members of one frame are joined", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto* join = editor::find_command("edit.join");
    REQUIRE(join != nullptr);
    choose(ui, {"rail front top"});
    CHECK_FALSE(join->enabled(ui.desk));
    choose(ui, {"rail front top", "rail back top"});
    CHECK(join->enabled(ui.desk));
    const auto before = *ui.now().project;
    run(ui, "edit.join");
    CHECK(*ui.now().project == before);
    REQUIRE(ui.desk.ui.notice);
}

TEST_CASE("a chosen post is mirrored, and what it comes to is told before",
          "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put(ui, model::PutPlane{frame_in(ui).name, {"left mid", model::Axis::x, "10 in"}, ""});
    auto post = member(ui, "post front left");
    post.name = "post left mid";
    post.on[0] = "left mid";
    put(ui, model::PutMember{frame_in(ui).name, post, ""});
    choose(ui, {"post left mid"});
    run(ui, "frame.mirror");
    CHECK_THAT(ui.item("Mirror/comes to").value,
               Contains("1 layout plane more") && Contains("1 member more"));
    ui.click("Mirror/Put");
    ui.settle();
    CHECK(member(ui, "post right mid").on[0] == "right mid");
}

TEST_CASE("a chosen brace is mirrored alone, though it is no member", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put(ui, model::PutStock{{.name = "flat", .section = "flat 1 x 1/8", .alloy = "6061-T6"}, ""});
    put(ui, model::PutDiagonal{frame_in(ui).name,
                               {.name = "brace left",
                                .stock = "flat",
                                .face = "left",
                                .from = {"front", "bottom"},
                                .to = {"back", "shelf 1"}},
                               ""});
    const auto& resolved = ui.now().resolved;
    const auto brace =
        std::ranges::find(resolved.pieces, model::PieceKind::brace, &model::Piece::kind);
    REQUIRE(brace != resolved.pieces.end());
    ui.desk.ui.selection = editor::selection_of(
        *ui.now().project, resolved, {static_cast<model::Index>(brace - resolved.pieces.begin())});
    const auto members = frame_in(ui).members.size();
    run(ui, "frame.mirror");
    CHECK(std::get<editor::MirrorForm>(ui.desk.ui.dialog).chosen ==
          std::vector<std::string>{"brace left"});
    ui.click("Mirror/Put");
    ui.settle();
    REQUIRE(frame_in(ui).diagonals.size() == 2);
    CHECK(frame_in(ui).diagonals[1].name == "brace right");
    CHECK(frame_in(ui).members.size() == members);
}

TEST_CASE("what is mirrored already is told so, and nothing is put", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    run(ui, "frame.mirror");
    CHECK_FALSE(ui.item("Mirror/Put").enabled);
    CHECK_THAT(ui.item("Mirror/trouble").value, Contains("mirror image already"));
}

TEST_CASE("a bay is repeated as often and at the pitch that is typed", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    run(ui, "frame.repeat_bay");
    ui.write("Repeat/times", "2");
    ui.write("Repeat/pitch", "3 in");
    ui.click("Repeat/upward");
    ui.settle();
    CHECK_THAT(ui.item("Repeat/comes to").value, Contains("2 layout planes more"));
    ui.click("Repeat/Put");
    ui.settle();
    CHECK(frame_in(ui).bays.size() == 4);
    CHECK(ui.now().project->dimensions.back().formula == "3 in");
}

TEST_CASE("how far a bay goes is not explained as the pitch of holes", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    run(ui, "frame.repeat_bay");
    CHECK(ui.has("Repeat/pitch"));
    CHECK_FALSE(ui.has("Repeat/term pitch"));
}

TEST_CASE("no number of times that is none is taken", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    run(ui, "frame.repeat_bay");
    ui.write("Repeat/times", "some");
    ui.settle();
    CHECK_FALSE(ui.item("Repeat/Put").enabled);
    CHECK_THAT(ui.item("Repeat/trouble").value, Contains("once to 100 times"));
}

TEST_CASE("a frame is copied of the opposite hand behind the first, with dimensions of its own",
          "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto dimensions = ui.now().project->dimensions.size();
    const auto pieces = ui.now().resolved.pieces.size();
    const auto findings = ui.now().findings.size();
    const auto groups = ui.now().finding_groups;
    run(ui, "frame.copy");
    ui.write("Copy/name", "port side");
    ui.click("Copy/ones of its own");
    ui.click("Copy/opposite");
    ui.settle();
    CHECK_THAT(ui.item("Copy/comes to").value, Contains("a frame of"));
    ui.click("Copy/Put");
    ui.settle();
    REQUIRE(ui.now().project->frames.size() == 2);
    CHECK(ui.now().project->frames[1].name == "port side");
    CHECK(ui.now().project->dimensions.size() > dimensions);
    CHECK(ui.now().resolved.pieces.size() == 2 * pieces);
    CHECK(ui.now().findings.size() == 2 * findings);
    CHECK(has_each_group_twice(ui, groups));  // the copy's own say nothing new
}

TEST_CASE("a copy stands a hand behind the last frame, whichever is copied",
          "[editor][laying out]") {
    for (const char* first : {"0 in", "90 in"}) {
        HeadlessUi ui;
        tests::start_box(ui.desk);
        auto project = *ui.now().project;
        auto other = project.frames.front();
        other.name = "other";
        other.origin[1] = "40 in";
        project.frames.front().origin[1] = first;
        project.frames.push_back(other);
        editor::replace_project(ui.desk, project, {});
        ui.settle();
        const auto groups = ui.now().finding_groups.size();
        const auto findings = ui.now().findings.size();
        ui.desk.ui.selection.pieces = {{"other", "post front left", 0}};
        run(ui, "frame.copy");
        CHECK(ui.item("Copy/place y").value == (first[0] == '0' ? "59" : "109"));
        ui.click("Copy/Put");
        ui.settle();
        CHECK(ui.now().finding_groups.size() == groups);
        CHECK(2 * ui.now().findings.size() == 3 * findings);  // of two frames alike, then three
    }
}

TEST_CASE("a shelf's plane is removed with what stands on it, which is named before",
          "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    run(ui, "frame.take_out_plane");
    CHECK_FALSE(ui.item("Take out/Put").enabled);
    ui.click("Take out/upward/shelf 1");
    ui.settle();
    CHECK_THAT(ui.item("Take out/gone").value, Contains("rail front shelf 1"));
    CHECK_THAT(ui.item("Take out/comes to").value, Contains("1 layout plane less"));
    ui.click("Take out/Put");
    ui.settle();
    CHECK_FALSE(has_member(ui, "rail front shelf 1"));
    CHECK(frame_in(ui).bays.size() == 1);
}

TEST_CASE("rails that become one again are not told as gone, posts that end sooner as shorter",
          "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put_middle(ui);
    put(ui, model::SplitMember{frame_in(ui).name, "rail front top", "middle"});
    REQUIRE(has_member(ui, "rail front top 2"));
    run(ui, "frame.take_out_plane");
    ui.click("Take out/left to right/middle");
    ui.settle();
    CHECK_FALSE(ui.has("Take out/gone"));
    ui.press(editor::key::escape);
    run(ui, "frame.take_out_bay");
    ui.click("Take out/bay/level 2");
    ui.settle();
    CHECK_THAT(ui.item("Take out/gone").value,
               Contains("These go: rail front top") && Contains("Shorter: post front left"));
}

TEST_CASE("bars that are cut and turned by one change are told as both", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put_middle(ui);
    auto after = frame_in(ui);
    const auto found = std::ranges::find(after.members, "rail front top", &model::Member::name);
    REQUIRE(found != after.members.end());
    found->to = "middle";
    found->legs[0] =
        found->legs[0] == model::Sense::plus ? model::Sense::minus : model::Sense::plus;
    CHECK(editor::words_of_gone(ui.now(), frame_in(ui), after) ==
          "Shorter: rail front top. Legs turned: rail front top.");
}

TEST_CASE("feet, ranks and joints that bars lose which stay are told", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto before = frame_in(ui);
    const auto rail = [](model::Frame& frame) -> model::Member& {
        return *std::ranges::find(frame.members, "rail front top", &model::Member::name);
    };
    rail(before).foot_to = true;
    rail(before).rank = 35;
    before.joints = {{.members = {"rail front top", "post front left"}, .removable = true},
                     {.members = {"rail front top", "post front right"}, .removable = true},
                     {.members = {"rail left top", "post front left"}, .removable = true}};
    auto after = before;
    rail(after).foot_to = false;
    rail(after).rank.reset();
    after.joints.erase(after.joints.begin());
    after.joints[0].members = {"post front right", "rail front top"};
    std::erase_if(after.members, [](const auto& it) { return it.name == "rail left top"; });
    after.joints.pop_back();
    CHECK(editor::words_of_gone(ui.now(), before, after) ==
          "These go: rail left top. Without a foot that they have: rail front top. "
          "Ranked anew: rail front top. Joined by the rule again: rail front top + post front "
          "left.");
}

TEST_CASE("braces, panels and loads that a change adds are told", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    put(ui, model::PutStock{{.name = "flat", .section = "flat 1 x 1/8", .alloy = "6061-T6"}, ""});
    const auto& bay = frame_in(ui).bays.front();
    model::Frame more = frame_in(ui);
    more.diagonals.push_back({.name = "brace",
                              .stock = "flat",
                              .face = "front",
                              .from = {bay.x[0], bay.z[0]},
                              .to = {bay.x[1], bay.z[1]}});
    more.panels.push_back(
        {.name = "sheet", .bay = bay.name, .material = "5052-H32", .thickness = "1/16 in"});
    more.loads = {{.name = "a", .mass_kg = 1, .where = bay.name},
                  {.name = "b", .mass_kg = 1, .where = bay.name}};
    const auto words = [&](const model::Frame& next) {
        const auto trial = editor::frame_trial(ui.now(), *ui.desk.catalogue, next.name, {},
                                               editor::change_of(model::PutFrame{next, next.name}));
        return trial.words;
    };
    CHECK(words(more) == "1 brace more, 1 panel more, 2 loads more");
    CHECK(words(frame_in(ui)) == "members are moved, none is added");
}

TEST_CASE("a bay is removed with or without its bars", "[editor][laying out]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto before = frame_in(ui).members.size();
    run(ui, "frame.take_out_bay");
    ui.click("Take out/bay/level 2");
    ui.click("Take out/with bars");
    ui.settle();
    ui.click("Take out/Put");
    ui.settle();
    CHECK(frame_in(ui).members.size() == before);
    run(ui, "edit.undo");
    run(ui, "frame.take_out_bay");
    ui.click("Take out/bay/level 2");
    ui.settle();
    ui.click("Take out/Put");
    ui.settle();
    CHECK(frame_in(ui).members.size() < before);
    CHECK(member(ui, "post front left").to == "shelf 1");
}
