// A bay that comes again in a frame of more than one: what ends where others pass, and what stands
// out beyond the bays beside it.
#include "model/project/edit.h"
#include "model/resolve/finding.h"

#include "tests/model/project/laid_out.h"

#include <catch2/catch.hpp>

#include <algorithm>

using Catch::Matchers::Contains;
using namespace model;
using namespace model_tests;

namespace {

RepeatBay repeat(const std::string& bay, Axis axis, const Formula& pitch = "") {
    return {.frame = "box", .bay = bay, .axis = axis, .times = 1, .pitch = pitch};
}

// Of larger angle, which has room for all rivets where three bars meet.
Project wide_box(int shelves, int dividers) {
    Stock angle = started_box().stock[0];
    angle.section = "angle 1 1/4 x 1 1/4 x 1/8";
    return edited(started_box(shelves, dividers), PutStock{angle, "angle"});
}

bool has_two_in_one_place(const Project& project) {
    const auto planes = resolved(project).frames[0].planes;
    for (std::size_t i = 0; i < planes.size(); ++i) {
        for (std::size_t k = 0; k < i; ++k) {
            if (planes[i] == planes[k]) return true;
        }
    }
    return false;
}

}  // namespace

TEST_CASE(
    "a bay of several comes again with no finding that the frame lacked, or is refused in "
    "words",
    "[model][edit][repeat]") {
    const int shelves = GENERATE(0, 1);
    const int dividers = GENERATE(0, 1);
    const auto axis = GENERATE(Axis::x, Axis::y, Axis::z);
    const std::string pitch = GENERATE("", "6");
    const Project before = started_box(shelves, dividers);
    REQUIRE(faults(resolved(before)).empty());
    for (const Bay& bay : before.frames[0].bays) {
        CAPTURE(bay.name, axis, pitch);
        const auto after = apply(before, repeat(bay.name, axis, pitch));
        // Only what would stand out both beside and above another bay.
        CHECK(after.has_value() == !(axis == Axis::y && shelves == 1 && dividers == 1));
        if (after) {
            CHECK(faults(resolved(*after)).empty());
        } else {
            CHECK(after.error().where == "frame box, bay " + bay.name);
            CHECK_THAT(after.error().message, Contains("stand out from the bays beside it"));
        }
    }
}

TEST_CASE("bays repeated one after the other, in either order, have no finding",
          "[model][edit][repeat]") {
    const int shelves = GENERATE(0, 1);
    const int dividers = GENERATE(0, 1);
    const auto axis = GENERATE(Axis::x, Axis::y, Axis::z);
    const Project before = wide_box(shelves, dividers);
    int accepted = 0;
    for (const Bay& first : before.frames[0].bays) {
        const auto once = apply(before, repeat(first.name, axis, "6"));
        if (!once) continue;
        for (const Bay& second : before.frames[0].bays) {
            if (second.name == first.name) continue;
            CAPTURE(first.name, second.name, axis);
            const auto twice = apply(*once, repeat(second.name, axis, "6"));
            if (twice) CHECK(faults(resolved(*twice)).empty());
            accepted += twice ? 1 : 0;
        }
    }
    CAPTURE(shelves, dividers, axis);
    // Of four none comes out before the others; of those on a diagonal two orders leave planes
    // nearer to one another than the pitch.
    const int of_four = axis == Axis::y ? 0 : 10;
    CHECK(accepted == (shelves + dividers == 2 ? of_four : shelves + dividers == 1 ? 2 : 0));
}

TEST_CASE("where a column stands out above the one beside it, the divider turns to it",
          "[model][edit][repeat]") {
    const Project before = started_box(0, 1);
    const Project left = edited(before, repeat("column 1", Axis::z));
    CHECK(member(left, "post front divider 1").to == "top 2");
    CHECK(member(left, "post front divider 1").legs == std::array{Sense::minus, Sense::plus});
    CHECK(member(left, "rail divider 1 bottom").legs[0] == Sense::minus);
    // Stands on the rails that part the post, and holds the upper part.
    CHECK(member(left, "rail divider 1 top").legs == std::array{Sense::minus, Sense::plus});
    CHECK(member(left, "rail divider 1 top 2").legs == std::array{Sense::minus, Sense::minus});
    const Project right = edited(before, repeat("column 2", Axis::z));
    CHECK(member(right, "post front divider 1").legs == std::array{Sense::plus, Sense::plus});
    CHECK(member(right, "rail divider 1 top").legs == std::array{Sense::plus, Sense::plus});
}

TEST_CASE("a post that ends behind some rails lies behind those of its copy too",
          "[model][edit][repeat]") {
    const Project after = edited(started_box(0, 1), repeat("column 1", Axis::z));
    CHECK(member(after, "post front divider 1").rank == 25);
    CHECK_FALSE(member(after, "post front left").rank.has_value());
}

TEST_CASE("columns repeated upward one after the other share planes and rails",
          "[model][edit][repeat]") {
    const Formula pitch = GENERATE("", "6");
    CAPTURE(pitch);
    const Project before = started_box(0, 1);
    const Project first = edited(before, repeat("column 1", Axis::z, pitch));
    const Project after = edited(first, repeat("column 2", Axis::z, pitch));
    CHECK(after.frames[0].planes == first.frames[0].planes);
    CHECK(after.dimensions == first.dimensions);
    CHECK(member(after, "rail front top 2").from == "left");
    CHECK(member(after, "rail front top 2").to == "right");
    CHECK(member(after, "post front right").to == "top 2");
    // Four rails at the new top, and one on the divider.
    CHECK(after.frames[0].members.size() == before.frames[0].members.size() + 5);
    CHECK(faults(resolved(after)).empty());
}

TEST_CASE("bays repeated one after the other by one pitch follow it together",
          "[model][edit][repeat]") {
    Project before = edited(started_box(0, 1), PutPlane{"box", {"half", Axis::z, "15"}, ""});
    Member rail = member(before, "rail front top");
    rail.name = "half rail";
    rail.on[1] = "half";
    before = edited(before, PutMember{"box", rail, ""});
    const Project once = edited(before, repeat("column 1", Axis::z, "20"));
    const Project after = edited(once, repeat("column 2", Axis::z, "20 in"));
    CHECK(after.dimensions == once.dimensions);
    CHECK(after.frames[0].planes == once.frames[0].planes);
    CHECK(member(after, "half rail 2").from == "left");
    CHECK(member(after, "half rail 2").to == "right");
}

TEST_CASE("overrides come again with a bar that is there already", "[model][edit][repeat]") {
    JointOverride joint{.members = {"rail right top", "post front right"}, .recipe = {}};
    joint.count = 3;
    Project project = edited(started_box(0, 1), PutJoint{"box", joint});
    joint.members = {"rail divider 1 top", "rail front top"};
    project = edited(project, PutJoint{"box", joint});
    joint.members = {"rail divider 1 top", "post front divider 1"};
    project = edited(project, PutJoint{"box", joint});
    project = edited(project, repeat("column 1", Axis::z));
    project = edited(project, repeat("column 2", Axis::z));
    const auto& joints = project.frames[0].joints;
    const auto count = [&](const std::string& a, const std::string& b) {
        return std::ranges::count(joints, std::array{a, b}, &JointOverride::members);
    };
    CHECK(count("rail divider 1 top 2", "rail front top 2") == 1);
    CHECK(count("rail right top 2", "post front right") == 1);
    CHECK(count("rail divider 1 top 2", "post front divider 1") == 1);
}

TEST_CASE("shelves repeated from both sides of a divider become one", "[model][edit][repeat]") {
    const Project before = wide_box(1, 1);
    Project after = edited(before, repeat("column 1 level 1", Axis::z, "6"));
    CHECK(member(after, "rail divider 1 shelf 2").legs == std::array{Sense::minus, Sense::minus});
    after = edited(after, repeat("column 2 level 1", Axis::z, "6"));
    CHECK(member(after, "rail front shelf 2").to == "right");
    CHECK(member(after, "rail divider 1 shelf 2").legs[1] == Sense::plus);
    CHECK_FALSE(has_two_in_one_place(after));
    CHECK(faults(resolved(after)).empty());
}

TEST_CASE("what would stand out on bars whose legs point both ways is refused",
          "[model][edit][repeat]") {
    const auto error = refused(started_box(1, 1), repeat("column 1 level 1", Axis::y));
    CHECK(error.where == "frame box, bay column 1 level 1");
    CHECK_THAT(error.message, Contains("bars along \"shelf 1\" have their legs on both sides"));
}

TEST_CASE("what would stand out on bars that hold others behind them is refused",
          "[model][edit][repeat]") {
    // The right column is higher, so that the divider's legs cannot turn from it.
    const Project higher = edited(started_box(0, 1), repeat("column 2", Axis::z));
    const auto error = refused(higher, repeat("column 1", Axis::y));
    CHECK(error.where == "frame box, bay column 1");
    CHECK_THAT(error.message, Contains("would have to hold others on both sides"));
}
