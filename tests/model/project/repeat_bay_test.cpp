// A bay that comes again along an axis, with what frames it.
#include "model/project/edit.h"
#include "model/resolve/finding.h"

#include "tests/model/project/laid_out.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Matchers::Contains;
using namespace model;
using namespace model_tests;

namespace {

const Bay& bay(const Project& project, const std::string& name) {
    const auto& bays = project.frames[0].bays;
    const auto found = std::ranges::find(bays, name, &Bay::name);
    if (found == bays.end()) FAIL("there is no bay " + name);
    return *found;
}

Formula position(const Project& project, const std::string& plane) {
    const auto& planes = project.frames[0].planes;
    const auto found = std::ranges::find(planes, plane, &Plane::name);
    return found == planes.end() ? "none" : found->position;
}

RepeatBay along(Axis axis, int times, const Formula& pitch = "") {
    return {.frame = "box", .bay = "inside", .axis = axis, .times = times, .pitch = pitch};
}

}  // namespace

TEST_CASE("a bay repeated as wide as it is follows its own width", "[model][edit][repeat]") {
    const Project after = edited(started_box(), along(Axis::x, 2));
    CHECK(position(after, "right 2") == "2 * width");
    CHECK(position(after, "right 3") == "3 * width");
    CHECK(bay(after, "inside 2").x == std::array<std::string, 2>{"right", "right 2"});
    CHECK(bay(after, "inside 3").x == std::array<std::string, 2>{"right 2", "right 3"});
    CHECK(after.dimensions == started_box().dimensions);
}

TEST_CASE("a plain pitch becomes a dimension, another one is used as it is",
          "[model][edit][repeat]") {
    const Project after = edited(started_box(), along(Axis::x, 2, "20"));
    CHECK(after.dimensions.back().name == "inside pitch");
    CHECK(after.dimensions.back().formula == "20");
    CHECK(position(after, "right 3") == "width + 2 * inside pitch");
    const Project by_width = edited(started_box(), along(Axis::x, 1, "width / 2"));
    CHECK(by_width.dimensions == started_box().dimensions);
    CHECK(position(by_width, "right 2") == "width + (width / 2)");
}

TEST_CASE("what ends the bay comes again, what runs along it runs on", "[model][edit][repeat]") {
    const Project before = started_box();
    const Project after = edited(before, along(Axis::x, 2));
    CHECK(member(after, "rail front top").to == "right 3");
    CHECK(member(after, "post front right 2").on[0] == "right 2");
    CHECK(member(after, "post front right 3").on[0] == "right 3");
    // Two posts and two rails at each new end.
    CHECK(after.frames[0].members.size() == before.frames[0].members.size() + 8);
}

TEST_CASE("a repeated bay has no finding that the original lacked", "[model][edit][repeat]") {
    const auto axis = GENERATE(Axis::x, Axis::y, Axis::z);
    const int times = GENERATE(1, 2);
    CAPTURE(axis, times);
    const auto before = resolved(started_box());
    CHECK(faults(before).empty());
    const auto after = resolved(edited(started_box(), along(axis, times, "15")));
    CHECK(faults(after).empty());
    CHECK(after.pieces.size() > before.pieces.size());
}

TEST_CASE("overrides come again with what they are of", "[model][edit][repeat]") {
    JointOverride joint{.members = {"rail front top", "post front right"}, .recipe = {}};
    joint.count = 3;
    const Project before = edited(started_box(), PutJoint{"box", joint});
    const Project after = edited(before, along(Axis::x, 1));
    REQUIRE(after.frames[0].joints.size() == 2);
    CHECK(after.frames[0].joints[1].members ==
          std::array<std::string, 2>{"rail front top", "post front right 2"});
    CHECK(after.frames[0].joints[1].count == 3);
}

TEST_CASE("the next bay gives way to shelves that come again", "[model][edit][repeat]") {
    const Project before = started_box(1, 0);
    const Project after = edited(
        before,
        RepeatBay{.frame = "box", .bay = "level 1", .axis = Axis::z, .times = 2, .pitch = "6"});
    CHECK(bay(after, "level 2").z == std::array<std::string, 2>{"shelf 3", "top"});
    CHECK(bay(after, "level 3").z == std::array<std::string, 2>{"shelf 1", "shelf 2"});
    CHECK(bay(after, "level 4").z == std::array<std::string, 2>{"shelf 2", "shelf 3"});
    CHECK(member(after, "post front left") == member(before, "post front left"));
    CHECK(faults(resolved(after)) == faults(resolved(before)));
}

TEST_CASE("a bay is not repeated where another one is in the way", "[model][edit][repeat]") {
    const auto error = refused(
        started_box(1, 0),
        RepeatBay{.frame = "box", .bay = "level 1", .axis = Axis::z, .times = 3, .pitch = "8"});
    CHECK(error.where == "frame box, bay level 1");
    CHECK_THAT(error.message, Contains("\"level 2\" is in the way"));
}

TEST_CASE("panels and loads of the bay come again where asked", "[model][edit][repeat]") {
    Project before = started_box();
    for (const Sense side : {Sense::minus, Sense::plus}) {
        Panel end{.name = side == Sense::minus ? "left end" : "right end", .bay = "inside"};
        end.face_axis = Axis::x;
        end.face_side = side;
        end.thickness = "1/4 in";
        before = edited(before, PutPanel{"box", end, ""});
    }
    Panel door{.name = "door", .bay = "inside", .thickness = "1/2 in"};
    before = edited(before, PutPanel{"box", door, ""});
    before =
        edited(before, PutLoad{"box", {.name = "tyres", .mass_kg = 9.0, .where = "inside"}, ""});
    RepeatBay repeat = along(Axis::x, 1);
    repeat.with_loads = true;
    const Frame after = edited(before, repeat).frames[0];
    REQUIRE(after.panels.size() == 5);  // not the one where the bay begins
    CHECK(after.panels[3].name == "right end 2");
    CHECK(after.panels[4].name == "door 2");
    CHECK(after.panels[4].bay == "inside 2");
    REQUIRE(after.loads.size() == 2);
    CHECK(std::get<std::string>(after.loads[1].where) == "inside 2");
    repeat.with_panels = repeat.with_loads = false;
    CHECK(edited(before, repeat).frames[0].panels.size() == 3);
    CHECK(edited(before, repeat).frames[0].loads.size() == 1);
}

TEST_CASE("what stands within the bay comes again at the pitch", "[model][edit][repeat]") {
    Project before = edited(started_box(), PutPlane{"box", {"mid", Axis::x, "width / 2"}, ""});
    Member post = member(before, "post front left");
    post.name = "mid post";
    post.on[0] = "mid";
    before = edited(before, PutMember{"box", post, ""});
    const Project after = edited(before, along(Axis::x, 1, "40"));
    CHECK(member(after, "mid post 2").on[0] == "mid 2");
    CHECK(position(after, "mid 2") == "(width / 2) + inside pitch");
    CHECK_THAT(refused(before, along(Axis::x, 1, "10")).message, Contains("give a larger one"));
}

TEST_CASE("a plane that lies by chance where a copy ends is not the copy's",
          "[model][edit][repeat]") {
    const Project before = edited(started_box(), PutPlane{"box", {"sink", Axis::z, "54"}, ""});
    const Project after = edited(before, along(Axis::z, 1, "24"));
    CHECK(bay(after, "inside 2").z == std::array<std::string, 2>{"top", "top 2"});
    CHECK(position(after, "top 2") == "height + inside pitch");
    CHECK(after.dimensions.back().name == "inside pitch");
}

TEST_CASE("a plane that lies by chance where one within a copy comes is not the copy's",
          "[model][edit][repeat]") {
    Project before = edited(started_box(), PutPlane{"box", {"sink", Axis::x, "58"}, ""});
    before = edited(before, PutPlane{"box", {"mid", Axis::x, "width / 2"}, ""});
    Member post = member(before, "post front left");
    post.name = "mid post";
    post.on[0] = "mid";
    before = edited(before, PutMember{"box", post, ""});
    const Project after = edited(before, along(Axis::x, 1, "40"));
    CHECK(member(after, "mid post 2").on[0] == "mid 2");
}

TEST_CASE("a bar that is split stays so where its bay comes again", "[model][edit][repeat]") {
    const auto axis = GENERATE(Axis::y, Axis::z);
    CAPTURE(axis);
    Project before = edited(started_box(), PutPlane{"box", {"middle", Axis::x, "15"}, ""});
    before = edited(before, SplitMember{"box", "rail back top", "middle"});
    const Project after = edited(before, along(axis, 1));
    const std::size_t k = axis == Axis::y ? 0 : 1;  // of its planes
    const auto on = member(after, "rail back top 3").on;
    CHECK(on[k] == member(before, "rail back top 1").on[k] + " 2");
    CHECK(on[1 - k] == member(before, "rail back top 1").on[1 - k]);
    CHECK(member(after, "rail back top 3").from == "left");
    CHECK(member(after, "rail back top 3").to == "middle");
    CHECK(member(after, "rail back top 4").on == on);
    CHECK(member(after, "rail back top 4").from == "middle");
    CHECK(member(after, "rail back top 4").to == "right");
}

TEST_CASE("a bar that takes up only part of a place where one would come again is named",
          "[model][edit][repeat]") {
    Project before = edited(started_box(), PutPlane{"box", {"upper", Axis::z, "60"}, ""});
    before = edited(before, PutPlane{"box", {"mid", Axis::x, "15"}, ""});
    Member handle = member(before, "rail front top");
    handle.name = "handle";
    handle.on[1] = "upper";
    handle.to = "mid";
    before = edited(before, PutMember{"box", handle, ""});
    const auto error = refused(before, along(Axis::z, 1));
    CHECK(error.where == "frame box, bay inside");
    CHECK_THAT(error.message, Contains("\"handle\" lies only in part where \"rail front top\""));
    const auto rails = [](const Project& project) {
        return std::ranges::count(project.frames[0].members, Axis::x, &Member::run);
    };
    const auto has_room = edited(before, RemoveMember{"box", "handle"});
    CHECK(rails(edited(has_room, along(Axis::z, 1))) == rails(has_room) + 2);
    handle.to = "right";  // does all the work of the rail
    before = edited(before, PutMember{"box", handle, "handle"});
    CHECK(rails(edited(before, along(Axis::z, 1))) == rails(before) + 1);
}

TEST_CASE("a bay is repeated once to a hundred times at a pitch of more than nothing",
          "[model][edit][repeat]") {
    CHECK_THAT(refused(started_box(), along(Axis::x, 0)).message, Contains("once to 100 times"));
    CHECK_FALSE(apply(started_box(), along(Axis::x, 101)).has_value());
    CHECK(refused(started_box(), along(Axis::x, 1, "0")).where == "frame box, bay inside, pitch");
    CHECK(refused(started_box(), along(Axis::x, 1, "((")).code == engine::ErrorCode::invalid_text);
}
