// Edits by which a frame is laid out by hand: turning, splitting and joining members.
#include "model/project/edit.h"

#include "tests/model/project/laid_out.h"

#include <catch2/catch.hpp>

#include <utility>

using Catch::Matchers::Contains;
using namespace model;
using namespace model_tests;

namespace {

Project with_mid_plane() {
    return edited(started_box(), PutPlane{"box", {"middle", Axis::x, "width / 2"}, ""});
}

Project with_joint(Project project, const std::string& a, const std::string& b, int count) {
    JointOverride joint{.members = {a, b}, .recipe = {}, .fastener = {}, .count = count};
    return edited(project, PutJoint{"box", joint});
}

}  // namespace

// ---- turning ------------------------------------------------------------------------------------

TEST_CASE("flipping legs turns the leg along the axis and no other", "[model][edit][laying out]") {
    const Project before = started_box();
    const Project after =
        edited(before, FlipLegs{"box", {"post front left", "rail front top"}, Axis::x});
    CHECK(member(after, "post front left").legs == std::array{Sense::minus, Sense::plus});
    CHECK(member(after, "rail front top") == member(before, "rail front top"));
}

TEST_CASE("legs flipped twice are as they were", "[model][edit][laying out]") {
    const FlipLegs flip{"box", {"post front left"}, Axis::y};
    CHECK(edited(edited(started_box(), flip), flip) == started_box());
}

TEST_CASE("flipping is refused where no member chosen has such a leg",
          "[model][edit][laying out]") {
    const auto error = refused(started_box(), FlipLegs{"box", {"rail front top"}, Axis::x});
    CHECK(error.where == "frame box");
    CHECK_THAT(error.message, Contains("leg along x"));
}

TEST_CASE("turned end for end, a member's foot and allowance change places",
          "[model][edit][laying out]") {
    Member post = member(started_box(), "post front left");
    post.foot_from = true;
    post.allowance_to = "1/8 in";
    const Project before = edited(started_box(), PutMember{"box", post, post.name});
    const Project after = edited(before, TurnEndForEnd{"box", post.name});
    CHECK(member(after, post.name).foot_to);
    CHECK_FALSE(member(after, post.name).foot_from);
    CHECK(member(after, post.name).allowance_from == "1/8 in");
    CHECK(edited(after, TurnEndForEnd{"box", post.name}) == before);
}

TEST_CASE("a member with both ends alike is not turned end for end", "[model][edit][laying out]") {
    const auto error = refused(started_box(), TurnEndForEnd{"box", "post front left"});
    CHECK(error.where == "frame box, member post front left");
    CHECK_THAT(error.message, Contains("both its ends are stated alike"));
}

TEST_CASE("a member whose planes are in the wrong order is mended by turning it end for end",
          "[model][edit][laying out]") {
    Member post = member(started_box(), "post front left");
    std::swap(post.from, post.to);
    const Project before = edited(started_box(), PutMember{"box", post, post.name});
    CHECK(edited(before, TurnEndForEnd{"box", post.name}) == started_box());
}

// ---- splitting and joining ----------------------------------------------------------------------

TEST_CASE("a member split at a plane becomes two that end there", "[model][edit][laying out]") {
    const Project after = edited(with_mid_plane(), SplitMember{"box", "rail front top", "middle"});
    CHECK(member(after, "rail front top 1").to == "middle");
    CHECK(member(after, "rail front top 2").from == "middle");
    CHECK(after.frames[0].members.size() == with_mid_plane().frames[0].members.size() + 1);
}

TEST_CASE("split and joined again, the project is as before", "[model][edit][laying out]") {
    Project before = with_mid_plane();
    before = with_joint(before, "rail front top", "post front left", 3);
    before = with_joint(before, "post front right", "rail front top", 4);
    Member rail = member(before, "rail front top");
    rail.allowance_to = "1/4 in";
    rail.foot_from = true;
    rail.note = "cut it last";
    before = edited(before, PutMember{"box", rail, rail.name});
    const Project split = edited(before, SplitMember{"box", "rail front top", "middle"});
    CHECK_FALSE(split == before);
    const Project joined =
        edited(split, JoinMembers{"box", {"rail front top 2", "rail front top 1"}});
    CHECK(joined == before);
}

TEST_CASE("each part of a split member keeps the overrides with what it meets",
          "[model][edit][laying out]") {
    Project before = with_joint(with_mid_plane(), "rail front top", "post front left", 3);
    before = with_joint(before, "post front right", "rail front top", 4);
    const Project after = edited(before, SplitMember{"box", "rail front top", "middle"});
    const auto& joints = after.frames[0].joints;
    REQUIRE(joints.size() == 2);
    CHECK(joints[0].members == std::array<std::string, 2>{"rail front top 1", "post front left"});
    CHECK(joints[1].members == std::array<std::string, 2>{"post front right", "rail front top 2"});
}

TEST_CASE("a member is split between its ends only", "[model][edit][laying out]") {
    const auto error = refused(with_mid_plane(), SplitMember{"box", "rail front top", "right"});
    CHECK(error.where == "frame box, member rail front top");
    CHECK_THAT(error.message, Contains("choose one between \"left\" and \"right\""));
    CHECK_THAT(refused(with_mid_plane(), SplitMember{"box", "rail front top", "front"}).message,
               Contains("does not lie across x"));
}

TEST_CASE("members that differ, do not meet or meet with an end held back are not joined",
          "[model][edit][laying out]") {
    const Project split = edited(with_mid_plane(), SplitMember{"box", "rail front top", "middle"});
    const JoinMembers join{"box", {"rail front top 1", "rail front top 2"}};
    Member second = member(split, "rail front top 2");
    const auto with_second = [&](const Member& changed) {
        return refused(edited(split, PutMember{"box", changed, changed.name}), join).message;
    };
    Member changed = second;
    changed.turned = true;
    CHECK_THAT(with_second(changed), Contains("differ in the way their legs lie"));
    changed = second;
    changed.rank = 5;
    CHECK_THAT(with_second(changed), Contains("differ in rank"));
    changed = second;
    changed.allowance_from = "1/8 in";
    CHECK_THAT(with_second(changed), Contains("held back or has a foot"));
    CHECK_THAT(
        refused(split, JoinMembers{"box", {"rail front top 1", "rail front bottom"}}).message,
        Contains("differ in the planes"));
    CHECK_THAT(refused(split, JoinMembers{"box", {"rail front top 1", "rail front top 1"}}).message,
               Contains("two different ones"));
}

TEST_CASE("parts that are joined to one bar in different ways are not made one",
          "[model][edit][laying out]") {
    Project before = edited(with_mid_plane(), SplitMember{"box", "rail front top", "middle"});
    before = with_joint(before, "rail front top 1", "post front left", 3);
    before = with_joint(before, "rail front top 2", "post front left", 4);
    const auto error =
        refused(before, JoinMembers{"box", {"rail front top 1", "rail front top 2"}});
    CHECK_THAT(error.where, Contains("rail front top 2 + post front left"));
    CHECK_THAT(error.message, Contains("make the two alike"));
}

TEST_CASE("a part whose planes are in the wrong order is turned end for end before it is joined",
          "[model][edit][laying out]") {
    const Project split = edited(with_mid_plane(), SplitMember{"box", "rail front top", "middle"});
    Member second = member(split, "rail front top 2");
    second.from = "middle";
    second.to = "left";
    const Project before = edited(split, PutMember{"box", second, second.name});
    const JoinMembers join{"box", {"rail front top 1", "rail front top 2"}};
    const auto error = refused(before, join);
    CHECK_THAT(error.message, Contains("from \"left\" to \"left\""));
    CHECK_THAT(error.message, Contains("end for end"));
    Member both_wrong = second;
    both_wrong.from = "right";
    both_wrong.to = "middle";
    Member first = member(split, "rail front top 1");
    std::swap(first.from, first.to);
    Project turned = edited(split, PutMember{"box", both_wrong, both_wrong.name});
    turned = edited(turned, PutMember{"box", first, first.name});
    CHECK_THAT(refused(turned, join).message, Contains("from \"right\" to \"left\""));
}
