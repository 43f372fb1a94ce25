// What a step over an obstacle stands on: dimensions that follow the obstacle and the frame.
#include "tests/model/project/stepped_counter.h"

using Catch::Matchers::Contains;
using namespace step_over_tests;

// ---- it stays parametric ------------------------------------------------------------------------

TEST_CASE("plain values of the faces become dimensions that the obstacle refers to",
          "[model][edit][step_over]") {
    const Project after = stepped(well_in_middle);
    const auto& well = std::get<WheelWell>(after.room.front().shape);
    CHECK(well.most[2] == "wheel well top");
    CHECK(named(after.dimensions, "wheel well top").formula == "12");
    CHECK(well.least[2] == "-1");  // of a face that cuts nothing
    CHECK(after.shop.clearance == "clearance");
    CHECK(named(after.dimensions, "clearance").formula == Shop{}.clearance);
    CHECK(named(frame_of(after).planes, "wheel well top").position ==
          "wheel well top + clearance - counter origin z");
}

TEST_CASE("formulas of names are taken as they are, and no name is taken twice",
          "[model][edit][step_over]") {
    Project project = counter_project();
    project = edited(project, PutDimension{{.name = "wheel well top", .formula = "11"}});
    project = edited(project, PutDimension{{.name = "row", .formula = "6"}});
    Obstacle well = box_at({"row + 2 in", "13", "-1"}, {"39", "30", "12"});
    well.clearance = "row / 12";
    const Project after = edited(with(project, well), over_well);
    const auto& shape = std::get<WheelWell>(after.room.front().shape);
    CHECK(shape.least[0] == "row + 2 in");
    CHECK(shape.most[2] == "wheel well top 2");
    CHECK(named(frame_of(after).planes, "wheel well left").position ==
          "(row + 2 in) - counter origin x - (row / 12)");
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 2));
}

TEST_CASE("moving the obstacle moves the step", "[model][edit][step_over]") {
    Project after = stepped(well_in_middle);
    after = edited(after, SetFormula{"wheel well top", "14 1/2"});
    after = edited(after, SetFormula{"wheel well least x", "10"});
    after = edited(after, SetFormula{"clearance", "1/2 in"});
    CHECK(place(after, "wheel well top") == quarters(4 * 15));
    CHECK(place(after, "wheel well left") == quarters(4 * 10 - 2));
    CHECK(faults(after) == "");
}

TEST_CASE("a clearance that is stated becomes the obstacle's", "[model][edit][step_over]") {
    const Project before = with(counter_project(), well_in_middle);
    const Project after = edited(before, StepOver{"counter", "wheel well", "3/4 in"});
    CHECK(after.room.front().clearance == "wheel well clearance");
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 3));
    CHECK(after.shop == before.shop);
}

TEST_CASE("what only stays clear is stepped over without a clearance", "[model][edit][step_over]") {
    Obstacle walkway = well_in_middle;
    walkway.stays_clear = true;
    CHECK(place(stepped(walkway), "wheel well top") == quarters(4 * 12));
}

TEST_CASE("the step stays at the obstacle when the frame is put elsewhere",
          "[model][edit][step_over]") {
    Project after = stepped(well_in_middle);
    after = edited(after, PlaceFrame{"counter", {"2", "0", "1/2 in"}, 0});
    CHECK(place(after, "wheel well left") == quarters(4 * 6 - 1));
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 1 - 2));
    CHECK(frame_of(after).origin[0] == "counter origin x");
    after = edited(after, PutDimension{{.name = "row", .formula = "3"}});
    after = edited(after, PlaceFrame{"counter", {"row", "0", "0"}, 0});
    CHECK(frame_of(after).origin[0] == "row");
    CHECK(place(after, "wheel well left") == quarters(4 * 5 - 1));
    CHECK(place(after, "left") == 0);
}

TEST_CASE("a frame whose place is a sum can be put elsewhere after the step",
          "[model][edit][step_over]") {
    Project project = edited(counter_project(), PutDimension{{.name = "row", .formula = "1"}});
    project = edited(project, PlaceFrame{"counter", {"row + 1 in", "0", "0"}, 0});
    Project after = edited(with(project, well_in_middle), over_well);
    CHECK(place(after, "wheel well left") == quarters(4 * 6 - 1));
    CHECK(named(after.dimensions, "counter origin x").formula == "row + 1 in");
    after = edited(after, PlaceFrame{"counter", {"3", "0", "0"}, 0});
    CHECK(place(after, "wheel well left") == quarters(4 * 5 - 1));
    CHECK(named(after.dimensions, "row").formula == "1");
}

TEST_CASE("a frame is not turned away from what its step stands at", "[model][edit][step_over]") {
    const Project before = with(counter_project(), well_in_middle);
    CHECK(apply(before, PlaceFrame{"counter", {"0", "0", "0"}, 1}));
    const Project after = edited(before, over_well);
    const auto error = refused(after, PlaceFrame{"counter", {"0", "0", "0"}, 1});
    CHECK(error.where == "frame counter, plane wheel well left");
    CHECK_THAT(error.message, Contains("before it is stepped over"));
    CHECK(apply(after, PlaceFrame{"counter", {"1", "0", "0"}, 4}));
    const Project flat =
        edited(with(counter_project(), box_at({"-1", "-1", "-1"}, {"50", "30", "5"})), over_well);
    CHECK(apply(flat, PlaceFrame{"counter", {"0", "0", "0"}, 1}));  // only its top is cut
}

TEST_CASE("a measure of the obstacle that is typed over moves the step too",
          "[model][edit][step_over]") {
    Project after = stepped(well_in_middle);
    Obstacle well = after.room.front();
    std::get<WheelWell>(well.shape).most[2] = "14 1/2";
    well.clearance = "1/2 in";
    after = edited(after, PutObstacle{well, well.name});
    CHECK(named(after.dimensions, "wheel well top").formula == "14 1/2");
    CHECK(std::get<WheelWell>(after.room.front().shape).most[2] == "wheel well top");
    CHECK(place(after, "wheel well top") == quarters(4 * 15));
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 2));
    well = after.room.front();
    well.clearance = "";
    after = edited(after, PutObstacle{well, well.name});
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 1));
    after.shop.clearance = "3/4 in";
    after = edited(stepped(well_in_middle), SetShop{after.shop});
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 3));
    CHECK(after.shop.clearance == "clearance");
}

TEST_CASE("a measure that is typed over leaves alone what else stands on its dimension",
          "[model][edit][step_over]") {
    Project project = edited(counter_project(), PutDimension{{.name = "row", .formula = "8"}});
    project = edited(project, PutDimension{{.name = "long", .formula = "31"}});
    project = with(project, box_at({"row", "13", "-1"}, {"row + long", "30", "12"}));
    Project after = edited(project, over_well);
    Obstacle well = after.room.front();
    std::get<WheelWell>(well.shape).least[0] = "10";
    after = edited(after, PutObstacle{well, well.name});
    CHECK(named(after.dimensions, "row").formula == "8");
    CHECK(place(after, "wheel well left") == quarters(4 * 10 - 1));
    CHECK(place(after, "wheel well right") == quarters(4 * 39 + 1));
    std::get<WheelWell>(well.shape).least[0] = "row 2";
    std::get<WheelWell>(well.shape).most[0] = "row + 30 in";
    after = edited(after, PutObstacle{well, well.name});
    CHECK(place(after, "wheel well left") == quarters(4 * 10 - 1));
    CHECK(place(after, "wheel well right") == quarters(4 * 38 + 1));
}

// ---- heads and tails ----------------------------------------------------------------------------

TEST_CASE("the planes keep what heads stand out beyond the clearance, as a dimension of the frame",
          "[model][edit][step_over]") {
    StepOver edit = over_well;
    edit.standing = "1/4 in";
    Project after = edited(with(counter_project(), well_in_middle), edit);
    CHECK(named(after.dimensions, "counter heads").formula == "1/4 in");
    CHECK(named(frame_of(after).planes, "wheel well top").position ==
          "wheel well top + clearance + counter heads - counter origin z");
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 2));
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 2));
    after = edited(after, SetFormula{"counter heads", "1/2 in"});
    CHECK(place(after, "wheel well top") == quarters(4 * 12 + 3));
    edit.standing = "-1/4 in";
    CHECK_THAT(refused(with(counter_project(), well_in_middle), edit).message,
               Contains("below zero"));
}

TEST_CASE("steps of one frame share the room for heads, and it grows with what they want",
          "[model][edit][step_over]") {
    Project project = with(counter_project(), box_at({"-1", "13", "-1"}, {"14", "30", "12"}));
    Obstacle other = box_at({"34", "13", "-1"}, {"50", "30", "8"});
    other.name = "other well";
    project = with(project, other);
    StepOver edit = over_well;
    edit.standing = "1/4 in";
    project = edited(project, edit);
    edit.obstacle = "other well";
    const Formula wanted = GENERATE("1/8 in", "1/2 in");
    edit.standing = wanted;
    project = edited(project, edit);
    const engine::Nm both = wanted == "1/8 in" ? 2 : 3;
    CHECK(find(project.dimensions, "counter heads 2") == nullptr);
    CHECK(place(project, "wheel well top") == quarters(4 * 12 + both));
    CHECK(place(project, "other well top") == quarters(4 * 8 + both));
    CHECK(faults(project) == "");
}

TEST_CASE("a place that another thing shares gets a dimension of its own when the frame moves",
          "[model][edit][step_over]") {
    Project project = edited(counter_project(), PutDimension{{.name = "row", .formula = "1"}});
    project = edited(project, PutDimension{{.name = "twice", .formula = "2 * row"}});
    project = edited(project, PlaceFrame{"counter", {"row", "0", "0"}, 0});
    Project after = edited(with(project, well_in_middle), over_well);
    after = edited(after, PlaceFrame{"counter", {"3", "0", "0"}, 0});
    CHECK(named(after.dimensions, "row").formula == "1");
    CHECK(frame_of(after).origin[0] == "row 2");
    CHECK(place(after, "wheel well left") == quarters(4 * 5 - 1));
}

TEST_CASE("the planes of a turned frame are measured the other way", "[model][edit][step_over]") {
    Project project = counter_project();
    // Seen from above the counter's width runs along Y and its depth towards smaller X.
    project = edited(project, PlaceFrame{"counter", {"60", "20", "0"}, 1});
    project = with(project, box_at({"30", "28", "-1"}, {"47", "59", "12"}));
    const Project after = edited(project, over_well);
    CHECK(named(frame_of(after).planes, "wheel well front").position ==
          "counter origin x - wheel well most x - clearance");
    CHECK(place(after, "wheel well front") == quarters(4 * 13 - 1));
    CHECK(place(after, "wheel well left") == quarters(4 * 8 - 1));
    CHECK(place(after, "wheel well right") == quarters(4 * 39 + 1));
    CHECK(faults(after) == "");
}

TEST_CASE("a cylinder is stepped over by its foot, radius and length", "[model][edit][step_over]") {
    const Obstacle pipe{
        .name = "pipe",
        .shape = CylinderObstacle{
            .foot = {"24", "22", "-1"}, .along = Axis::z, .radius = "6", .length = "15"}};
    Project after = edited(with(counter_project(), pipe), StepOver{"counter", "pipe"});
    CHECK(place(after, "pipe left") == quarters(4 * 18 - 1));
    CHECK(place(after, "pipe front") == quarters(4 * 16 - 1));
    CHECK(place(after, "pipe top") == quarters(4 * 14 + 1));
    after = edited(after, SetFormula{"pipe radius", "7"});
    CHECK(place(after, "pipe right") == quarters(4 * 31 + 1));
    CHECK(faults(after) == "");
}

TEST_CASE("a frame can be stepped over one well after another, also of the same size",
          "[model][edit][step_over]") {
    const Formula top = GENERATE("12", "8");
    const Formula front = GENERATE("13", "9");
    CAPTURE(top, front);
    Project project = with(counter_project(), box_at({"-1", "13", "-1"}, {"14", "30", "12"}));
    Obstacle other = box_at({"34", front, "-1"}, {"50", "30", top});
    other.name = "other well";
    project = with(project, other);
    project = edited(project, over_well);
    project = edited(project, StepOver{"counter", "other well"});
    CHECK(roots(project) == 6);
    CHECK(faults(project) == "");
}

TEST_CASE("a well whose name begins with another's keeps its own step",
          "[model][edit][step_over]") {
    Project project = with(counter_project(), box_at({"-1", "13", "-1"}, {"14", "30", "12"}));
    Obstacle second = box_at({"34", "13", "-1"}, {"50", "30", "8"});
    second.name = "wheel well 2";
    project = edited(with(project, second), over_well);
    project = edited(project, StepOver{"counter", "wheel well 2"});
    Obstacle first = project.room.front();
    first.clearance = "1 in";
    project = edited(project, PutObstacle{first, ""});
    CHECK(place(project, "wheel well top") == quarters(4 * 13));
    CHECK(place(project, "wheel well 2 top") == quarters(4 * 8 + 1));
    CHECK(faults(project) == "");
}

TEST_CASE("a step goes on following a well that gets another name", "[model][edit][step_over]") {
    Project project = edited(with(counter_project(), well_in_middle), over_well);
    Obstacle well = project.room.front();
    well.name = "left well";
    project = edited(project, PutObstacle{well, "wheel well"});
    CHECK(find(frame_of(project).planes, "wheel well top") == nullptr);
    CHECK(place(project, "left well top") == quarters(4 * 12 + 1));
    CHECK(faults(project) == "");
    well = project.room.front();
    std::get<WheelWell>(well.shape).most[2] = "14 1/2";
    project = edited(project, PutObstacle{well, ""});
    well.clearance = "1/2 in";
    project = edited(project, PutObstacle{well, ""});
    CHECK(place(project, "left well top") == quarters(4 * 15));
    CHECK(faults(project) == "");
}
