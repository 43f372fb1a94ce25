// Repeats, take-outs and splits that would leave ends loose, joints without room or overrides of
// bars that no longer meet: what is refused, and what goes with the rest.
#include "model/project/edit.h"
#include "model/project/project_json.h"

#include "tests/model/project/laid_out.h"
#include "tests/model/project/sample_files.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

using Catch::Matchers::Contains;
using namespace model;
using namespace model_tests;

namespace {

Project box_with(std::vector<Formula> shelves) {
    Project project = started_box();
    project.frames.clear();
    project.dimensions.clear();
    return edited(project, StartBoxFrame{.frame = "box",
                                         .stock = project.stock[0].name,
                                         .width = "36",
                                         .depth = "18",
                                         .height = "30",
                                         .shelf_levels = std::move(shelves),
                                         .dividers = {}});
}

Project stepped() {
    Project project = started_box();
    project.frames.clear();
    project.dimensions.clear();
    return edited(project, StartSteppedFrame{.frame = "box",
                                             .stock = project.stock[0].name,
                                             .width = "44",
                                             .depth = "22",
                                             .height = "36",
                                             .well_height = "12",
                                             .well_depth = "9",
                                             .shelf_levels = {},
                                             .dividers = {}});
}

Project sample(const std::string& name) {
    auto project = read_project_json(sample_text(name + ".json"));
    if (!project) FAIL(engine::to_text(project.error()));
    return std::move(project).value();
}

std::string why_refused(const Project& project, const Edit& edit) {
    return engine::to_text(refused(project, edit));
}

RepeatBay again(const Project& project, const std::string& bay, Axis axis) {
    return {.frame = project.frames[0].name, .bay = bay, .axis = axis};
}

TakeOutBay out(const Project& project, const std::string& bay) {
    return {project.frames[0].name, bay, true};
}

bool has_joint_of(const Project& project, const std::string& first, const std::string& second) {
    return std::ranges::any_of(project.frames[0].joints, [&](const JointOverride& joint) {
        return joint.members == std::array{first, second} ||
               joint.members == std::array{second, first};
    });
}

Project with_joint(const Project& project, const std::string& first, const std::string& second) {
    return edited(
        project, PutJoint{project.frames[0].name, {.members = {first, second}, .removable = true}});
}

// A rail as another one, on another plane.
Project with_rail(
    Project project, const std::string& as, std::size_t on, Axis axis, const Formula& at) {
    project = edited(project, PutPlane{"box", {"middle", axis, at}, ""});
    Member rail = member(project, as);
    rail.name = "rail middle";
    rail.on[on] = "middle";
    return edited(project, PutMember{"box", rail, ""});
}

}  // namespace

TEST_CASE("a repeat that would part a bar and hold only one of its parts is refused",
          "[model][edit][repeat]") {
    const auto across = with_rail(started_box(), "rail left top", 0, Axis::x, "18");
    CHECK_THAT(
        why_refused(across, again(across, "inside", Axis::y)),
        Contains("\"rail back top\" would come to lie behind \"rail middle\" and be parted"));
    const auto upright = with_rail(started_box(), "rail front top", 1, Axis::z, "15");
    CHECK_THAT(
        why_refused(upright, again(upright, "inside", Axis::x)),
        Contains("\"post front right\" would come to lie behind \"rail middle\" and be parted"));
    CHECK(faults(resolved(edited(across, again(across, "inside", Axis::x)))).empty());
    for (const auto& [name, bay, axis] : {std::tuple{"mixed_bench", "inside", Axis::y},
                                          std::tuple{"water_tank_cradle", "tank", Axis::x}}) {
        const auto project = sample(name);
        CHECK_THAT(why_refused(project, again(project, bay, axis)), Contains("be parted by it"));
    }
}

TEST_CASE("a bay with a re-entrant edge at its end does not come again", "[model][edit][repeat]") {
    const auto counter = sample("work_counter");
    CHECK_THAT(why_refused(counter, again(counter, "below column 1", Axis::y)),
               Contains("\"rail well edge\" is a re-entrant edge of it"));
    const auto frame = stepped();
    CHECK_THAT(why_refused(frame, again(frame, "below", Axis::x)), Contains("re-entrant edge"));
    CHECK(faults(resolved(edited(frame, again(frame, "above", Axis::z)))).empty());
}

TEST_CASE("a repeat that would push rails two layers in beside a post is refused",
          "[model][edit][repeat]") {
    const auto two = box_with({"9", "19"});
    CHECK_THAT(why_refused(two, again(two, "level 1", Axis::x)), Contains("two layers in"));
    CHECK_THAT(why_refused(two, again(two, "level 3", Axis::x)), Contains("two layers in"));
    CHECK(faults(resolved(edited(two, again(two, "level 1", Axis::y)))).empty());
    const auto one = box_with({"14"});
    CHECK(faults(resolved(edited(one, again(one, "level 1", Axis::x)))).empty());
}

TEST_CASE("a bay that came again and is taken out leaves no rank behind",
          "[model][edit][take out]") {
    const auto before = box_with({"14"});
    for (const auto* bay : {"level 1", "level 2"}) {
        CAPTURE(bay);
        const auto repeated = edited(before, again(before, bay, Axis::x));
        CHECK(member(repeated, "post front right").rank == 25);
        const auto added = std::ranges::find_if(repeated.frames[0].bays, [&](const Bay& it) {
            return std::ranges::count(before.frames[0].bays, it.name, &Bay::name) == 0;
        });
        REQUIRE(added != repeated.frames[0].bays.end());
        const auto back = edited(repeated, out(repeated, added->name));
        CHECK(faults(resolved(back)).empty());
        for (const Member& it : before.frames[0].members) {
            CHECK(member(back, it.name).rank == it.rank);
        }
    }
}

TEST_CASE("a rank that stands for something else stays when a bay is taken out",
          "[model][edit][take out]") {
    const auto one = box_with({"14"});
    auto before = edited(one, again(one, "level 1", Axis::x));
    Member post = member(before, "post front left");
    post.rank = 15;
    before = edited(before, PutMember{"box", post, post.name});
    const auto after = edited(before, out(before, before.frames[0].bays.back().name));
    CHECK_FALSE(member(after, "post front right").rank);
    CHECK(member(after, "post front left").rank == 15);
}

TEST_CASE("a bay under a re-entrant edge is not taken out with its bars",
          "[model][edit][take out]") {
    const auto counter = sample("work_counter");
    CHECK_THAT(why_refused(counter, out(counter, "below column 2")),
               Contains("\"rail well edge\" would be no re-entrant edge any more"));
    const auto frame = stepped();
    CHECK_THAT(why_refused(frame, out(frame, "below")), Contains("no re-entrant edge any more"));
    CHECK(faults(resolved(edited(frame, out(frame, "above")))).empty());
    CHECK(edited(frame, TakeOutBay{"box", "below", false}).frames[0].bays.size() == 1);
}

TEST_CASE("a bay that holds the end of what leans is not taken out with its bars",
          "[model][edit][take out]") {
    const auto locker = sample("leaning_locker");
    for (const auto* bay : {"level 1", "level 3"}) {
        CHECK_THAT(why_refused(locker, out(locker, bay)),
                   Contains("\"post back left\" leans out of it"));
    }
    CHECK(edited(locker, out(locker, "level 2")).frames[0].leaning.size() == 2);
}

TEST_CASE("overrides of bars that no longer meet go with a bay that is taken out",
          "[model][edit][take out]") {
    auto before = box_with({"14"});
    before = with_joint(before, "post front left", "rail front bottom");
    before = with_joint(before, "post front left", "rail front top");
    before = edited(before, PutPlane{"box", {"low", Axis::z, "7"}, ""});
    Member rail = member(before, "rail front bottom");
    rail.name = "rail low";
    rail.on[1] = "low";
    rail.from = "left";
    before = edited(before, PutPlane{"box", {"far", Axis::x, "-6"}, ""});
    rail.from = "far";
    before = edited(before, PutMember{"box", rail, ""});
    before = with_joint(before, "post front left", "rail low");
    const auto after = edited(before, out(before, "level 1"));
    REQUIRE(std::ranges::count(after.frames[0].members, "rail low", &Member::name) == 1);
    CHECK_FALSE(has_joint_of(after, "post front left", "rail low"));
    CHECK(has_joint_of(after, "post front left", "rail front top"));
}

TEST_CASE("an override of a bar that comes again in part is for what that part meets",
          "[model][edit][repeat]") {
    // A post that goes on above the bay, and a rail up there that runs over its copies.
    auto before = box_with({"14"});
    before = edited(before, PutPlane{"box", {"far", Axis::x, "90"}, ""});
    Member rail = member(before, "rail front top");
    rail.name = "rail long";
    rail.to = "far";
    before = edited(before, RemoveMember{"box", "rail front top"});
    before = edited(before, PutMember{"box", rail, ""});
    before = with_joint(before, "post front right", "rail long");
    before = with_joint(before, "post front right", "rail front shelf 1");
    const auto after = edited(before, again(before, "level 1", Axis::x));
    CHECK(has_joint_of(after, "post front right", "rail long"));
    CHECK(has_joint_of(after, "post front right 2", "rail front shelf 1"));
    CHECK_FALSE(has_joint_of(after, "post front right 2", "rail long"));
}

TEST_CASE("the part of a split member that a brace meets keeps its override",
          "[model][edit][laying out]") {
    auto before = started_box();
    before.stock.push_back({.name = "flat", .section = "flat 1 x 1/8", .alloy = "6063-T52"});
    before = edited(before, PutDiagonal{"box",
                                        {.name = "brace",
                                         .stock = "flat",
                                         .face = "front",
                                         .from = {"left", "bottom"},
                                         .to = {"right", "top"}},
                                        ""});
    before = edited(before, PutPlane{"box", {"middle", Axis::x, "width / 2"}, ""});
    before = with_joint(before, "rail front bottom", "brace");
    const auto after = edited(before, SplitMember{"box", "rail front bottom", "middle"});
    CHECK(has_joint_of(after, "rail front bottom 1", "brace"));
    CHECK_FALSE(has_joint_of(after, "rail front bottom 2", "brace"));
}
