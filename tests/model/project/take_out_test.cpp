// Planes and bays removed with what stands on them or lies in them.
#include "model/project/edit.h"
#include "model/resolve/finding.h"

#include "tests/model/project/laid_out.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <utility>

using Catch::Matchers::Contains;
using namespace model;
using namespace model_tests;

namespace {

Project with_panel(const Project& project,
                   const std::string& name,
                   const std::string& bay,
                   Axis axis,
                   Sense side) {
    Panel panel{.name = name, .bay = bay, .face_axis = axis, .face_side = side};
    panel.thickness = "1/4 in";
    return edited(project, PutPanel{"box", panel, ""});
}

}  // namespace

TEST_CASE("a shelf's plane taken out leaves the frame that was started without it",
          "[model][edit][take out]") {
    const Project with = started_box(1, 0);
    const Project without = started_box(0, 0);
    const Frame after = edited(with, TakeOutPlane{"box", "shelf 1"}).frames[0];
    CHECK(after.members == without.frames[0].members);
    CHECK(after.planes == without.frames[0].planes);
    REQUIRE(after.bays.size() == 1);
    CHECK(after.bays[0].name == "level 1");
    CHECK(after.bays[0].z == without.frames[0].bays[0].z);
}

TEST_CASE("members that meet at a plane that goes become one again", "[model][edit][take out]") {
    Project before = edited(started_box(), PutPlane{"box", {"middle", Axis::x, "width / 2"}, ""});
    before = edited(before, SplitMember{"box", "rail front top", "middle"});
    CHECK(edited(before, TakeOutPlane{"box", "middle"}) == started_box());
}

TEST_CASE("a plane at the end takes all with it that cannot be without it",
          "[model][edit][take out]") {
    JointOverride joint{.members = {"rail front top", "post front left"}, .recipe = {}};
    joint.count = 3;
    Project before = edited(started_box(), PutJoint{"box", joint});
    before = with_panel(before, "door", "inside", Axis::y, Sense::minus);
    before = edited(before, PutLoad{"box", {.name = "load", .where = "inside"}, ""});
    const Frame after = edited(before, TakeOutPlane{"box", "right"}).frames[0];
    CHECK(after.members.size() == 4);  // two posts and two rails at the left
    CHECK(after.bays.empty());
    CHECK(after.panels.empty());
    CHECK(after.loads.empty());
    CHECK(after.joints.empty());
    CHECK(after.planes.size() == 5);
}

TEST_CASE("of two bays made one the panels that still have their face stay",
          "[model][edit][take out]") {
    Project before = started_box(1, 0);
    before = with_panel(before, "floor", "level 1", Axis::z, Sense::minus);
    before = with_panel(before, "shelf", "level 1", Axis::z, Sense::plus);
    before = with_panel(before, "lower door", "level 1", Axis::y, Sense::minus);
    before = with_panel(before, "upper door", "level 2", Axis::y, Sense::minus);
    before = with_panel(before, "lower back", "level 1", Axis::y, Sense::plus);
    before = with_panel(before, "lid", "level 2", Axis::z, Sense::plus);
    before = edited(before, PutLoad{"box", {.name = "load", .where = "level 2"}, ""});
    const Frame after = edited(before, TakeOutPlane{"box", "shelf 1"}).frames[0];
    std::vector<std::string> panels;
    for (const Panel& panel : after.panels) {
        panels.push_back(panel.name);
        CHECK(panel.bay == "level 1");
    }
    CHECK(panels == std::vector<std::string>{"floor", "lower door", "lid"});
    REQUIRE(after.loads.size() == 1);
    CHECK(std::get<std::string>(after.loads[0].where) == "level 1");
}

TEST_CASE("a bay is taken out with what is in it, its bars only where asked",
          "[model][edit][take out]") {
    Project before = with_panel(started_box(), "door", "inside", Axis::y, Sense::minus);
    before = edited(before, PutLoad{"box", {.name = "load", .where = "inside"}, ""});
    const Frame bare = edited(before, TakeOutBay{"box", "inside", false}).frames[0];
    CHECK(bare.bays.empty());
    CHECK(bare.panels.empty());
    CHECK(bare.loads.empty());
    CHECK(bare.members == started_box().frames[0].members);
    CHECK(bare.planes == started_box().frames[0].planes);
    const Frame nothing = edited(before, TakeOutBay{"box", "inside", true}).frames[0];
    CHECK(nothing.members.empty());
    CHECK(nothing.planes.empty());
}

TEST_CASE("a bay repeated and taken out with its bars leaves the frame as it was",
          "[model][edit][take out]") {
    const auto axis = GENERATE(Axis::x, Axis::y, Axis::z);
    CAPTURE(axis);
    const RepeatBay repeat{.frame = "box", .bay = "inside", .axis = axis, .times = 2};
    Project project = edited(started_box(), repeat);
    project = edited(project, TakeOutBay{"box", "inside 3", true});
    project = edited(project, TakeOutBay{"box", "inside 2", true});
    CHECK(project == started_box());
}

TEST_CASE("a frame without one of its bays has no finding that it lacked before",
          "[model][edit][take out]") {
    const auto [shelves, dividers] = GENERATE(std::pair{1, 0}, std::pair{0, 1}, std::pair{1, 1});
    const Project before = started_box(shelves, dividers);
    REQUIRE(faults(resolved(before)).empty());
    for (const Bay& bay : before.frames[0].bays) {
        CAPTURE(before.frames[0].bays.size(), bay.name);
        CHECK(faults(resolved(edited(before, TakeOutBay{"box", bay.name, true}))).empty());
    }
}

TEST_CASE("where a bay goes, legs that pointed into it alone turn away",
          "[model][edit][take out]") {
    const Project before = started_box(0, 1);
    const Project left = edited(before, TakeOutBay{"box", "column 2", true});
    CHECK(member(left, "post front divider 1").legs == std::array{Sense::minus, Sense::plus});
    CHECK(member(left, "rail divider 1 top").legs == std::array{Sense::minus, Sense::minus});
    const Project right = edited(before, TakeOutBay{"box", "column 1", true});
    CHECK(member(right, "rail divider 1 top") == member(before, "rail divider 1 top"));
    const Project with_others =
        edited(started_box(1, 1), TakeOutBay{"box", "column 2 level 1", true});
    CHECK(member(with_others, "post front divider 1").legs[0] == Sense::plus);
}

TEST_CASE("a member that is cut back has neither foot nor allowance at its new end",
          "[model][edit][take out]") {
    Project before = started_box(0, 1);
    Member rail = member(before, "rail front bottom");
    rail.foot_from = rail.foot_to = true;
    rail.allowance_from = "1/8 in";
    rail.allowance_to = "1/4 in";
    before = edited(before, PutMember{"box", rail, rail.name});
    const Project left = edited(before, TakeOutBay{"box", "column 2", true});
    CHECK_FALSE(member(left, rail.name).foot_to);
    CHECK(member(left, rail.name).allowance_to == "0");
    CHECK(member(left, rail.name).foot_from);
    CHECK(member(left, rail.name).allowance_from == "1/8 in");
    const Project right = edited(before, TakeOutBay{"box", "column 1", true});
    CHECK_FALSE(member(right, rail.name).foot_from);
    CHECK(member(right, rail.name).allowance_from == "0");
    CHECK(member(right, rail.name).foot_to);
}

TEST_CASE("a bay of no width goes with its plane and all that is in it",
          "[model][edit][take out]") {
    Project before = edited(started_box(), PutPlane{"box", {"mid", Axis::x, "18"}, ""});
    Bay flat{.name = "flat", .x = {"mid", "mid"}, .y = {"front", "back"}, .z = {"bottom", "top"}};
    before = edited(before, PutBay{"box", flat, ""});
    before = edited(before, PutLoad{"box", {.name = "load", .where = "flat"}, ""});
    before = with_panel(before, "door", "flat", Axis::y, Sense::minus);
    CHECK(edited(before, TakeOutPlane{"box", "mid"}) == started_box());
}

TEST_CASE("what is not there is not taken out", "[model][edit][take out]") {
    CHECK(refused(started_box(), TakeOutPlane{"box", "shelf"}).message ==
          "there is no plane \"shelf\"");
    CHECK(refused(started_box(), TakeOutBay{"box", "upper", true}).message ==
          "there is no bay \"upper\"");
}
