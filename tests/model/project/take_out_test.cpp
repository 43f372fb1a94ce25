// Planes and bays removed with what stands on them or lies in them.
#include "model/project/edit.h"
#include "model/resolve/finding.h"

#include "tests/model/project/laid_out.h"

#include <catch2/catch.hpp>

#include <algorithm>

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

TEST_CASE("what is not there is not taken out", "[model][edit][take out]") {
    CHECK(refused(started_box(), TakeOutPlane{"box", "shelf"}).message ==
          "there is no plane \"shelf\"");
    CHECK(refused(started_box(), TakeOutBay{"box", "upper", true}).message ==
          "there is no bay \"upper\"");
}
