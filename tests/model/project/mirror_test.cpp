// Mirror images of bars within a frame.
#include "model/project/edit.h"
#include "model/resolve/finding.h"

#include "tests/model/project/laid_out.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Matchers::Contains;
using namespace model;
using namespace model_tests;

namespace {

const Plane& plane(const Project& project, const std::string& name, std::size_t frame = 0) {
    const auto& planes = project.frames[frame].planes;
    const auto found = std::ranges::find(planes, name, &Plane::name);
    if (found == planes.end()) FAIL("there is no plane " + name);
    return *found;
}

// A box in which only the left half of what stands between the ends is laid out.
Project half_laid_out() {
    Project project = edited(started_box(), PutPlane{"box", {"left mid", Axis::x, "10"}, ""});
    Member post = member(project, "post front left");
    post.name = "post front left mid";
    post.on[0] = "left mid";
    post.foot_from = true;
    project = edited(project, PutMember{"box", post, ""});
    Member rail = member(project, "rail front top");
    rail.name = "half rail";
    rail.on[1] = "bottom";
    rail.on[0] = "back";
    rail.legs = {Sense::minus, Sense::minus};
    rail.to = "left mid";
    rail.allowance_to = "1/4 in";
    return edited(project, PutMember{"box", rail, ""});
}

Diagonal brace_on_back(FaceSide side) {
    Diagonal brace{.name = "brace", .stock = "flat", .face = "back"};
    brace.from = {"left", "bottom"};
    brace.to = {"right", "top"};
    brace.side = side;
    return brace;
}

Project braced_box(FaceSide side) {
    Stock flat{.name = "flat", .section = "flat 3/4 x 1/8", .alloy = "6063-T52"};
    const Project before = edited(started_box(), PutStock{flat, ""});
    return edited(before, PutDiagonal{"box", brace_on_back(side), ""});
}

}  // namespace

TEST_CASE("a mirrored post stands on a new plane that stays opposite", "[model][edit][mirror]") {
    const MirrorBars mirror{.frame = "box", .bars = {"post front left mid"}};
    const Project after = edited(half_laid_out(), mirror);
    const Member& image = member(after, "post front right mid");
    CHECK(image.on == std::array<std::string, 2>{"right mid", "front"});
    CHECK(image.legs == std::array{Sense::minus, Sense::plus});
    CHECK(image.foot_from);
    CHECK(plane(after, "right mid").position == "width - 10 in");
}

TEST_CASE("a mirrored rail has its ends, and how far they are held back, the other way round",
          "[model][edit][mirror]") {
    const Project after =
        edited(half_laid_out(), MirrorBars{.frame = "box", .bars = {"half rail"}});
    const Member& image = member(after, "half rail 2");
    CHECK(image.from == "right mid");
    CHECK(image.to == "right");
    CHECK(image.allowance_from == "1/4 in");
    CHECK(image.allowance_to == "0");
    CHECK(image.legs == member(after, "half rail").legs);
}

TEST_CASE("what has its mirror image is left alone, and all mirrored twice is refused",
          "[model][edit][mirror]") {
    const MirrorBars all{.frame = "box"};
    const Project before = half_laid_out();
    const Project after = edited(before, all);
    CHECK(after.frames[0].members.size() == before.frames[0].members.size() + 2);
    CHECK_THAT(refused(after, all).message, Contains("has its mirror image already"));
    CHECK_THAT(refused(started_box(1, 0), all).message, Contains("already"));
}

TEST_CASE("overrides between mirrored bars come along", "[model][edit][mirror]") {
    JointOverride joint{.members = {"post front left mid", "rail front top"}, .recipe = {}};
    joint.count = 4;
    const Project before = edited(half_laid_out(), PutJoint{"box", joint});
    const Project after = edited(before, MirrorBars{.frame = "box"});
    REQUIRE(after.frames[0].joints.size() == 2);
    CHECK(after.frames[0].joints[1].members ==
          std::array<std::string, 2>{"post front right mid", "rail front top"});
    CHECK(after.frames[0].joints[1].count == 4);
}

TEST_CASE("bars are mirrored about the middle of the planes chosen", "[model][edit][mirror]") {
    const Project after = edited(
        half_laid_out(),
        MirrorBars{.frame = "box", .between = {"left", "left mid"}, .bars = {"post front left"}});
    CHECK(member(after, "post front right 2").on[0] == "left mid");
}

TEST_CASE("planes at one place have no middle to mirror about", "[model][edit][mirror]") {
    const auto error =
        refused(half_laid_out(), MirrorBars{.frame = "box", .between = {"left", "left"}});
    CHECK(error.where == "frame box");
    CHECK_THAT(error.message, Contains("choose two that lie apart"));
}

TEST_CASE("a brace and a leaning member are mirrored with the side their leg points to",
          "[model][edit][mirror]") {
    Project before = half_laid_out();
    Diagonal brace{.name = "brace left", .stock = "angle", .face = "left"};
    brace.from = {"front", "bottom"};
    brace.to = {"back", "top"};
    before = edited(before, PutDiagonal{"box", brace, ""});
    Leaning strut{.name = "strut", .stock = "angle", .face = "front"};
    strut.from = {"left", "bottom"};
    strut.to = {"left mid", "top"};
    before = edited(before, PutLeaning{"box", strut, ""});
    const Project after =
        edited(before, MirrorBars{.frame = "box", .bars = {"brace left", "strut"}});
    REQUIRE(after.frames[0].diagonals.size() == 2);
    CHECK(after.frames[0].diagonals[1].name == "brace right");
    CHECK(after.frames[0].diagonals[1].face == "right");
    REQUIRE(after.frames[0].leaning.size() == 2);
    const Leaning& image = after.frames[0].leaning[1];
    CHECK(image.from == std::array<std::string, 2>{"right", "bottom"});
    CHECK(image.to == std::array<std::string, 2>{"right mid", "top"});
    CHECK(image.leg == Sense::minus);  // it runs less along x
}

TEST_CASE("where all bars are mirrored, what lies along the line of an image does its work already",
          "[model][edit][mirror]") {
    const Project mid_divided = edited(started_box(0, 1), SetFormula{"divider 1", "width / 2"});
    CHECK_THAT(refused(mid_divided, MirrorBars{.frame = "box"}).message, Contains("already"));
    Project before = half_laid_out();
    Member turned = member(before, "post front left mid");
    turned.name = "post turned";
    turned.on[0] = "right mid";
    before = edited(before, PutPlane{"box", {"right mid", Axis::x, "width - 10 in"}, ""});
    before = edited(before, PutMember{"box", turned, ""});
    const Project after = edited(before, MirrorBars{.frame = "box"});
    CHECK(after.frames[0].members.size() == before.frames[0].members.size() + 1);  // half a rail
}

TEST_CASE("a bar that is named gets its image back to back with what lies along its line",
          "[model][edit][mirror]") {
    const Project before = edited(started_box(0, 1), SetFormula{"divider 1", "width / 2"});
    const MirrorBars mirror{.frame = "box", .bars = {"post front divider 1"}};
    const Project after = edited(before, mirror);
    const Member& image = member(after, "post front divider 2");
    CHECK(image.on == member(before, "post front divider 1").on);
    CHECK(image.legs == std::array{Sense::minus, Sense::plus});
    CHECK(after.frames[0].planes == before.frames[0].planes);
}

TEST_CASE("all bars of two back to back are mirrored", "[model][edit][mirror]") {
    Project before = half_laid_out();
    Member post = member(before, "post front left mid");
    post.name = "post turned";
    post.legs[0] = Sense::minus;
    before = edited(before, PutMember{"box", post, ""});
    const Project after = edited(before, MirrorBars{.frame = "box"});
    CHECK(after.frames[0].members.size() == before.frames[0].members.size() + 3);
}

TEST_CASE("a bar whose image would overlap it is refused, and of all bars left out",
          "[model][edit][mirror]") {
    Project before = half_laid_out();
    before = edited(before, PutPlane{"box", {"two thirds", Axis::x, "24"}, ""});
    Member rail = member(before, "half rail");
    rail.name = "long rail";
    rail.on[0] = "front";
    rail.to = "two thirds";
    before = edited(before, PutMember{"box", rail, ""});
    const auto error = refused(before, MirrorBars{.frame = "box", .bars = {"long rail"}});
    CHECK(error.where == "frame box, member long rail");
    CHECK_THAT(error.message, Contains("its image would overlap it"));
    const Frame after = edited(before, MirrorBars{.frame = "box"}).frames[0];
    CHECK(after.members.size() == before.frames[0].members.size() + 2);
    // That on which the images of the post and of half the rail stand, and no other.
    CHECK(after.planes.size() == before.frames[0].planes.size() + 1);
}

TEST_CASE("a brace whose image would cross it is left out where all bars are mirrored",
          "[model][edit][mirror]") {
    const Project before = braced_box(FaceSide::inside);
    const auto error = refused(before, MirrorBars{.frame = "box"});
    CHECK(error.where == "frame box, diagonal brace");
    CHECK_THAT(error.message, Contains("would cross it"));
}

TEST_CASE("the image of a named brace that would cross it lies on the other side of the face",
          "[model][edit][mirror]") {
    const auto side = GENERATE(FaceSide::inside, FaceSide::outside);
    const Project before = braced_box(side);
    const MirrorBars mirror{.frame = "box", .bars = {"brace"}};
    const Project crossed = edited(before, mirror);
    REQUIRE(crossed.frames[0].diagonals.size() == 2);
    const Diagonal& image = crossed.frames[0].diagonals[1];
    CHECK(image.from == std::array<std::string, 2>{"right", "bottom"});
    CHECK(image.side != side);
    CHECK_THAT(faults(resolved(crossed)), !Contains("interference"));
    Diagonal on_same_side = image;
    on_same_side.side = side;
    const Project through = edited(crossed, PutDiagonal{"box", on_same_side, image.name});
    CHECK_THAT(faults(resolved(through)), Contains("interference"));
    CHECK_THAT(refused(crossed, mirror).message, Contains("has its mirror image already"));
}

TEST_CASE("of two braces that cross each is the other's image", "[model][edit][mirror]") {
    const auto side = GENERATE(FaceSide::inside, FaceSide::outside);
    Project before = braced_box(FaceSide::inside);
    Diagonal other = brace_on_back(side);
    other.name = "other brace";
    std::swap(other.from[0], other.to[0]);
    before = edited(before, PutDiagonal{"box", other, ""});
    const MirrorBars all{.frame = "box"};
    CHECK_THAT(refused(before, all).message, Contains("has its mirror image already"));
    Project with_more = edited(before, PutPlane{"box", {"left mid", Axis::x, "10"}, ""});
    Member post = member(before, "post back left");
    post.name = "post back left mid";
    post.on[0] = "left mid";
    with_more = edited(with_more, PutMember{"box", post, ""});
    JointOverride joint{.members = {"brace", post.name}, .recipe = {}};
    joint.count = 1;
    with_more = edited(with_more, PutJoint{"box", joint});
    const auto joints = edited(with_more, all).frames[0].joints;
    REQUIRE(joints.size() == 2);
    CHECK(joints[1].members == std::array<std::string, 2>{"other brace", "post back right mid"});
}

TEST_CASE("a frame without two planes across the axis is not mirrored", "[model][edit][mirror]") {
    const Project empty = edited({}, PutFrame{{.name = "empty"}, ""});
    const auto error = refused(empty, MirrorBars{.frame = "empty"});
    CHECK(error.where == "frame empty");
    CHECK_THAT(error.message, Contains("no two planes across x"));
    const Project one = edited(empty, PutPlane{"empty", {"middle", Axis::z, "0"}, ""});
    const auto of_one = refused(one, MirrorBars{.frame = "empty", .axis = Axis::z});
    CHECK_THAT(of_one.message, Contains("no two planes across z"));
}
