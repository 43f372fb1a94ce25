#include "model/project/obstacle_measures.h"

#include "model/project/edit.h"

#include <catch2/catch.hpp>

namespace {

using namespace model;

Project with_dimensions(std::vector<Dimension> dimensions) {
    Project project;
    project.dimensions = std::move(dimensions);
    return project;
}

Obstacle box(const std::string& name, const Formula& reach, const Formula& height) {
    return {.name = name, .shape = BoxObstacle{{"0", "0", "0"}, {reach, "31", height}}};
}

using Words = std::vector<std::string>;

}  // namespace

TEST_CASE("what bears an obstacle's name and only it stands on are its measures",
          "[model][project]") {
    auto project = with_dimensions({{.name = "left well reach", .formula = "68 - left well rest"},
                                    {.name = "left well rest", .formula = "60"},
                                    {.name = "left well shared", .formula = "1"},
                                    {.name = "left well spare", .formula = "1"},
                                    {.name = "van width", .formula = "68"}});
    project.room = {box("left well", "left well reach + van width", "left well shared"),
                    box("tank", "9", "left well shared")};
    CHECK(obstacle_measures(project) == Words{"left well", "left well", "", "", ""});
    project.room.clear();
    CHECK(obstacle_measures(project) == Words{"", "", "", "", ""});
    CHECK(obstacle_measures(Project{}).empty());
}

TEST_CASE("an obstacle's measures go by its name as a formula can say it, and by the longer one",
          "[model][project]") {
    auto project = with_dimensions(
        {{.name = "well left top", .formula = "10"}, {.name = "well 2 top", .formula = "8"}});
    project.room = {box("well (left)", "1", "well left top"), box("well", "1", "2"),
                    box("well 2", "1", "well 2 top")};
    CHECK(obstacle_measures(project) == Words{"well (left)", "well 2"});
}

TEST_CASE("dimensions in a circle, or in a long row, have their obstacle all the same",
          "[model][project]") {
    constexpr int count = 20'000;
    std::vector<Dimension> row;
    for (int i = 0; i < count; ++i) {
        row.push_back({.name = "rib " + std::to_string(i),
                       .formula = "rib " + std::to_string((i + 1) % count)});
    }
    auto project = with_dimensions(std::move(row));
    project.room = {box("rib", "1", "rib 0")};
    const auto measures = obstacle_measures(project);
    CHECK(measures.front() == "rib");
    CHECK(measures.back() == "rib");
}

TEST_CASE("measures go by a new name with their obstacle, and formulas follow",
          "[model][project][edit]") {
    auto project = with_dimensions({{.name = "left well reach", .formula = "68 - left well rest"},
                                    {.name = "left well rest", .formula = "60"},
                                    {.name = "left well height", .formula = "10"},
                                    {.name = "left well spare", .formula = "left well rest + 1"},
                                    {.name = "driver well height", .formula = "1"}});
    project.room = {box("left well", "left well reach", "left well height")};
    const auto renamed =
        apply(project,
              PutObstacle{box("driver well", "left well reach", "left well height"), "left well"});
    REQUIRE(renamed);
    CHECK(renamed->dimensions[0].name == "driver well reach");
    CHECK(renamed->dimensions[0].formula == "68 - driver well rest");
    CHECK(renamed->dimensions[2].name == "left well height");  // the other name is taken
    CHECK(renamed->dimensions[3].name == "left well spare");   // no measure of it
    CHECK(renamed->dimensions[3].formula == "driver well rest + 1");
    CHECK(std::get<BoxObstacle>(renamed->room[0].shape).most[0] == "driver well reach");
    CHECK(obstacle_measures(*renamed) == Words{"driver well", "driver well", "", "", ""});
}
