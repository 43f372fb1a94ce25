#include "model/room/survey.h"

#include "model/project/edit.h"
#include "model/resolve/resolve.h"
#include "model/room/obstacle_shape.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace model;

namespace {

constexpr Nm inch(double value) {
    return static_cast<Nm>(value * static_cast<double>(engine::Length::nm_per_inch));
}

// A wheel well of an invented van.
WellTape measured_well() {
    return {.start = inch(20.5),
            .length = inch(34),
            .behind = inch(65.5),
            .room_length = inch(120),
            .height = inch(9.25),
            .reach = inch(8.5),
            .top_reach = inch(7.75),
            .across = inch(52),
            .opposite = inch(8.5),
            .room_width = inch(69)};
}

Project with_edit(const Edit& edit) {
    const auto next = apply(Project{}, edit);
    if (!next) FAIL(engine::to_text(next.error()));
    return *next;
}

SolidObstacle shape_in(const Project& project) {
    const auto resolved = resolve(project, {});
    return obstacle_shape(project.room.front().shape, {project, resolved});
}

void check_same(const SolidObstacle& a, const SolidObstacle& b) {
    CHECK(a.fault == b.fault);
    REQUIRE(a.bodies.size() == b.bodies.size());
    for (std::size_t i = 0; i < a.bodies.size(); ++i) {
        REQUIRE(a.bodies[i].near.size() == b.bodies[i].near.size());
        for (std::size_t k = 0; k < a.bodies[i].near.size(); ++k) {
            for (std::size_t axis = 0; axis < 3; ++axis) {
                CHECK(a.bodies[i].near[k][axis] ==
                      Approx(b.bodies[i].near[k][axis]).epsilon(0).margin(1e-6));
                CHECK(a.bodies[i].far[k][axis] ==
                      Approx(b.bodies[i].far[k][axis]).epsilon(0).margin(1e-6));
            }
        }
    }
}

SurveyWheelWell survey_of_well() {
    return {.obstacle = "near well",
            .start = "20 1/2",
            .length = "34",
            .height = "9 1/4",
            .reach = "8 1/2",
            .lean = "4.63 deg",
            .rounding = "1 in"};
}

}  // namespace

TEST_CASE("what adds up closes, along the van and across it", "[model][survey]") {
    const auto closings = well_closings(measured_well());
    REQUIRE(closings.size() == 2);
    CHECK(closings[0].error() == 0);
    CHECK(closings[1].error() == 0);
    CHECK(closing_words(closings[0], {}) == "closes to the mark");
}

TEST_CASE("a closing error of an eighth is as good as a tape, more asks to measure again",
          "[model][survey]") {
    const engine::TapeStyle inches;
    Closing closing{"along the van", inch(120.125), inch(120)};
    CHECK(grade_of(closing, inches) == ClosingGrade::ordinary);
    closing.found += 1;
    CHECK(grade_of(closing, inches) == ClosingGrade::measure_again);
    closing.found = inch(120) - engine::tape_step(inches).nm();
    CHECK(grade_of(closing, inches) == ClosingGrade::closes);
    const engine::TapeStyle metric{.form = engine::TapeForm::millimetre};
    closing.found = inch(120) + 3'000'000;
    CHECK(grade_of(closing, metric) == ClosingGrade::ordinary);
    closing.found += 1;
    CHECK(grade_of(closing, metric) == ClosingGrade::measure_again);
    CHECK(closing_words(closing, metric).find("measure again") != std::string::npos);
}

TEST_CASE("nothing closes while a part of it is not measured", "[model][survey]") {
    auto tape = measured_well();
    tape.behind.reset();
    tape.room_width.reset();
    CHECK(well_closings(tape).empty());
}

TEST_CASE("without a well opposite the other wall is measured to", "[model][survey]") {
    auto tape = measured_well();
    tape.opposite.reset();
    tape.across = inch(60.5);
    CHECK(well_closings(tape)[1].error() == 0);
}

TEST_CASE("a well's lean follows from its reach at the floor and at the top", "[model][survey]") {
    CHECK(*well_lean(measured_well()) ==
          Approx(std::atan2(0.75, 9.25) * 180 / 3.14159265).margin(0.01));
    auto tape = measured_well();
    tape.top_reach.reset();
    CHECK(well_lean(tape) == 0.0);
    tape.top_reach = inch(9);
    CHECK_FALSE(well_lean(tape));
}

TEST_CASE("a rounding's radius follows from the gap below two straightedges", "[model][survey]") {
    WellTape tape{.height = inch(9), .reach = inch(8)};
    tape.rounding_gap = inch(1.0 * (std::sqrt(2.0) - 1.0));
    CHECK(static_cast<double>(*well_rounding(tape)) == Approx(25.4e6).epsilon(1e-6));
    tape.rounding_gap.reset();
    CHECK_FALSE(well_rounding(tape));
}

TEST_CASE("a surveyed well leaves dimensions, and is the shape that was measured",
          "[model][survey]") {
    const auto project = with_edit(survey_of_well());
    REQUIRE(project.room.size() == 1);
    std::vector<std::string> names;
    for (const auto& dimension : project.dimensions) names.push_back(dimension.name);
    CHECK(names == std::vector<std::string>{"near well start", "near well length",
                                            "near well height", "near well reach", "near well lean",
                                            "near well rounding"});
    const auto well = well_as_measured({.rounding = inch(1)}, measured_well());
    REQUIRE(well);
    Project plain;
    plain.room = {{.name = "well", .shape = *well}};
    const auto shape = shape_in(project);
    CHECK_FALSE(shape.bodies.empty());
    check_same(shape, shape_in(plain));
}

TEST_CASE("a well at the wall of larger X reaches to smaller X", "[model][survey]") {
    auto edit = survey_of_well();
    edit.inside = Sense::minus;
    edit.wall = "69";
    edit.datum = "2 in";
    edit.floor = "1/2";
    const auto project = with_edit(edit);
    const auto well = well_as_measured({.inside = Sense::minus,
                                        .wall = inch(69),
                                        .datum = inch(2),
                                        .floor = inch(0.5),
                                        .rounding = inch(1)},
                                       measured_well());
    REQUIRE(well);
    Project plain;
    plain.room = {{.name = "well", .shape = *well}};
    const auto shape = shape_in(project);
    CHECK_FALSE(shape.bodies.empty());
    check_same(shape, shape_in(plain));
}

TEST_CASE("a surveyed well follows its dimensions", "[model][survey]") {
    const auto project = with_edit(survey_of_well());
    const auto longer = apply(project, SetFormula{"near well length", "36"});
    REQUIRE(longer);
    const auto before = shape_in(project);
    const auto after = shape_in(*longer);
    double most_before = 0.0;
    double most_after = 0.0;
    for (const auto& at : before.bodies[0].near) most_before = std::max(most_before, at[1]);
    for (const auto& at : after.bodies[0].near) most_after = std::max(most_after, at[1]);
    CHECK(most_after - most_before == Approx(2 * 25.4));
}

TEST_CASE("a survey is refused whole where its name is taken or a reading cannot be read",
          "[model][survey]") {
    const auto project = with_edit(survey_of_well());
    CHECK_FALSE(apply(project, survey_of_well()));
    auto edit = survey_of_well();
    edit.obstacle = "other";
    edit.reach = "8 1/2 in and";
    const auto refused = apply(project, edit);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().where.find("reach") != std::string::npos);
    CHECK_FALSE(apply(project, SurveyWall{.obstacle = "wall", .line = "30", .to = "96"}));
}

TEST_CASE("a wall from a plumb line is the wall that was measured", "[model][survey]") {
    const auto sense = GENERATE(Sense::plus, Sense::minus);
    const auto project =
        with_edit(SurveyWall{.obstacle = "side",
                             .inside = sense,
                             .line = "34 1/2",
                             .to = "96",
                             .readings = {{"0", "34 1/2"}, {"48", "34"}, {"72", "30 1/2"}}});
    const WallTape tape{{{inch(0), inch(34.5), {}, {}},
                         {inch(48), inch(34), {}, {}},
                         {inch(72), inch(30.5), {}, {}}}};
    const auto wall = wall_as_measured(sense, inch(34.5), 0, inch(96), tape);
    REQUIRE(wall);
    Project plain;
    plain.room = {{.name = "wall", .shape = *wall}};
    const auto shape = shape_in(project);
    CHECK_FALSE(shape.bodies.empty());
    check_same(shape, shape_in(plain));
}

TEST_CASE("each height of a wall closes for itself", "[model][survey]") {
    const WallTape tape{{{inch(0), inch(34), inch(35), inch(69)},
                         {inch(48), inch(33), inch(34), inch(67.5)},
                         {inch(72), inch(30), {}, inch(61)}}};
    const auto closings = wall_closings(tape, {});
    REQUIRE(closings.size() == 2);
    CHECK(grade_of(closings[0], {}) == ClosingGrade::closes);
    CHECK(grade_of(closings[1], {}) == ClosingGrade::measure_again);
    CHECK(closings[1].what == "48 in up");
}
