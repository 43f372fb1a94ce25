#include "model/project/obstacle_measures.h"

#include <catch2/catch.hpp>

namespace {

using namespace model;

Dimension length(const std::string& name, const std::string& formula) {
    return {.name = name, .formula = formula};
}

using Words = std::vector<std::string>;

}  // namespace

TEST_CASE("what only one obstacle stands on are its measures, also by way of others",
          "[model][project]") {
    Project project;
    project.dimensions = {length("reach", "8 1/4"), length("rail to wall", "60 1/4"),
                          length("gap", "1"), length("depth", "18")};
    project.dimensions[0].formula = "68 1/2 - rail to wall";
    project.room = {
        {.name = "left well", .shape = BoxObstacle{{"0", "0", "0"}, {"reach + gap", "31", "10"}}},
        {.name = "tank", .shape = BoxObstacle{{"30", "0", "0"}, {"40", "gap", "9"}}}};
    CHECK(obstacle_measures(project) == Words{"left well", "left well", "", ""});
    project.room.clear();
    CHECK(obstacle_measures(project) == Words{"", "", "", ""});
    CHECK(obstacle_measures(Project{}).empty());
}

TEST_CASE("what a frame stands on too is an obstacle's measure only by its name",
          "[model][project]") {
    Project project;
    project.dimensions = {length("left well height", "10 3/4"), length("height", "10 3/4"),
                          length("half", "height / 2")};
    project.room = {
        {.name = "left well",
         .shape = BoxObstacle{{"0", "0", "0"}, {"8", "31", "max(left well height, height)"}}}};
    CHECK(obstacle_measures(project) == Words{"left well", "", ""});  // half stands on height
    project.dimensions.pop_back();
    CHECK(obstacle_measures(project) == Words{"left well", "left well"});
    Frame frame{.name = "counter"};
    frame.planes = {{"step", Axis::z, "left well height + height"}};
    project.frames = {frame};
    CHECK(obstacle_measures(project) == Words{"left well", ""});
}
