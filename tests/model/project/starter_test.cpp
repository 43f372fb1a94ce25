#include "model/project/edit.h"

#include <catch2/catch.hpp>

#include <algorithm>

using engine::ErrorCode;
using namespace model;

namespace {

Project with_angle() {
    return {.name = "van",
            .stock = {{.name = "angle", .section = "angle 1 x 1 x 1/8", .alloy = "6063-T52"}}};
}

StartBoxFrame box() {
    return {.frame = "cabinet", .stock = "angle", .width = "36", .depth = "18", .height = "30"};
}

StartSteppedFrame stepped() {
    return {.frame = "counter",
            .stock = "angle",
            .width = "48",
            .depth = "22",
            .height = "36",
            .well_height = "12",
            .well_depth = "9"};
}

Project started(const Project& before, const Edit& edit) {
    auto after = apply(before, edit);
    if (!after) FAIL(to_text(after.error()));
    return *after;
}

const Member& member(const Frame& frame, const std::string& name) {
    const auto found = std::find_if(frame.members.begin(), frame.members.end(),
                                    [&](const Member& m) { return m.name == name; });
    if (found == frame.members.end()) FAIL("no member " + name);
    return *found;
}

const Plane& plane(const Frame& frame, const std::string& name) {
    const auto found = std::find_if(frame.planes.begin(), frame.planes.end(),
                                    [&](const Plane& p) { return p.name == name; });
    if (found == frame.planes.end()) FAIL("no plane " + name);
    return *found;
}

}  // namespace

TEST_CASE("a box frame has four posts and four rails at each level", "[model][starter]") {
    StartBoxFrame edit = box();
    CHECK(started(with_angle(), edit).frames[0].members.size() == 12);
    edit.shelf_levels = {"10", "20"};
    CHECK(started(with_angle(), edit).frames[0].members.size() == 20);
    edit.dividers = {"12"};
    CHECK(started(with_angle(), edit).frames[0].members.size() == 26);
}

TEST_CASE("plain values become dimensions that the planes refer to", "[model][starter]") {
    StartBoxFrame edit = box();
    edit.shelf_levels = {"14"};
    const Project after = started(with_angle(), edit);
    REQUIRE(after.dimensions.size() == 4);
    CHECK(after.dimensions[0].name == "width");
    CHECK(after.dimensions[0].formula == "36");
    CHECK(plane(after.frames[0], "right").position == "width");
    CHECK(plane(after.frames[0], "shelf 1").position == "shelf 1");
}

TEST_CASE("a second cabinet takes its own name into its dimensions", "[model][starter]") {
    const Project first = started(with_angle(), box());
    StartBoxFrame edit = box();
    edit.frame = "locker";
    const Project after = started(first, edit);
    CHECK(plane(after.frames[1], "right").position == "locker width");
    CHECK(after.dimensions.size() == 6);
}

TEST_CASE("a formula over other dimensions stays a formula", "[model][starter]") {
    Project project = with_angle();
    project.dimensions = {{.name = "van width", .formula = "60"}};
    StartSteppedFrame edit = stepped();
    edit.depth = "van width / 3";
    const Project after = started(project, edit);
    CHECK(plane(after.frames[0], "back").position == "van width / 3");
    CHECK(plane(after.frames[0], "well front").position == "(van width / 3) - well depth");
}

TEST_CASE("legs of a box frame point inward and shelf rails hang down", "[model][starter]") {
    StartBoxFrame edit = box();
    edit.shelf_levels = {"14"};
    const Frame frame = started(with_angle(), edit).frames[0];
    CHECK(member(frame, "post back right").legs == std::array{Sense::minus, Sense::minus});
    CHECK(member(frame, "rail front bottom").legs == std::array{Sense::plus, Sense::plus});
    CHECK(member(frame, "rail back top").legs == std::array{Sense::minus, Sense::minus});
    CHECK(member(frame, "rail left shelf 1").legs == std::array{Sense::plus, Sense::minus});
}

TEST_CASE("every compartment is a bay", "[model][starter]") {
    StartBoxFrame edit = box();
    CHECK(started(with_angle(), edit).frames[0].bays[0].name == "inside");
    edit.shelf_levels = {"14"};
    edit.dividers = {"12", "24"};
    const Frame frame = started(with_angle(), edit).frames[0];
    REQUIRE(frame.bays.size() == 6);
    CHECK(frame.bays[3].name == "column 2 level 2");
    CHECK(frame.bays[3].x == std::array<std::string, 2>{"divider 1", "divider 2"});
    CHECK(frame.bays[3].z == std::array<std::string, 2>{"shelf 1", "top"});
}

TEST_CASE("a stepped frame frames the re-entrant edge with its root on the line",
          "[model][starter]") {
    const Frame frame = started(with_angle(), stepped()).frames[0];
    const Member& edge = member(frame, "rail well edge");
    CHECK(edge.seat == Seat::root);
    CHECK(edge.on == std::array<std::string, 2>{"well front", "well top"});
    CHECK(edge.legs == std::array{Sense::plus, Sense::minus});
    CHECK(member(frame, "post back left").from == "well top");
    CHECK(member(frame, "post well front right").to == "well top");
    CHECK(member(frame, "rail left below well top").legs == std::array{Sense::plus, Sense::minus});
    CHECK(member(frame, "rail left well top").from == "well front");
    CHECK(frame.bays.size() == 2);
}

TEST_CASE("a starter wants a free name, a stock and readable formulas", "[model][starter]") {
    const auto refusal = [](const Project& project, const Edit& edit) {
        const auto after = apply(project, edit);
        REQUIRE_FALSE(after.has_value());
        return after.error();
    };
    CHECK(refusal(started(with_angle(), box()), box()).code == ErrorCode::duplicate_name);
    CHECK(refusal({}, box()).code == ErrorCode::unknown_name);
    StartBoxFrame edit = box();
    edit.depth = "18 +";
    CHECK(refusal(with_angle(), edit).code == ErrorCode::invalid_text);
    edit = box();
    edit.frame = "";
    CHECK(refusal(with_angle(), edit).code == ErrorCode::invalid_value);
    edit = box();
    edit.shelf_levels.assign(200, "1");
    CHECK(refusal(with_angle(), edit).code == ErrorCode::out_of_range);
}
