#include "tests/model/resolve/resolve_support.h"

namespace {

model::Project with_dimensions(std::vector<model::Dimension> dimensions) {
    auto project = tests::box_project(tests::BoxShape{}, "angle 1 x 1 x 1/8", "6063-T52");
    project.dimensions = std::move(dimensions);
    return project;
}

}  // namespace

TEST_CASE("a formula that cannot be read is told with its column", "[model][values]") {
    const auto resolved = tests::resolved(with_dimensions({{.name = "width", .formula = "36 +"}}));
    const auto* finding = tests::first_of(resolved, "formula_error");
    REQUIRE(finding != nullptr);
    CHECK(finding->what.find("column") != std::string::npos);
    CHECK(finding->concerns[0].name == "width");
}

TEST_CASE("formulas that need each other are told as a loop", "[model][values]") {
    const auto resolved = tests::resolved(with_dimensions(
        {{.name = "width", .formula = "depth"}, {.name = "depth", .formula = "width"}}));
    CHECK(tests::count_of(resolved, "formula_cycle") == 2);
}

TEST_CASE("a value outside its limits is told and still used", "[model][values]") {
    const auto resolved =
        tests::resolved(with_dimensions({{.name = "width", .formula = "36", .most = "30"}}));
    CHECK(tests::count_of(resolved, "outside_limits") == 1);
    REQUIRE(resolved.dimensions[0]);
    CHECK(resolved.dimensions[0]->length.nm() == tests::inches(36));
}

TEST_CASE("a plane beyond a kilometre leaves out what stands on it", "[model][values]") {
    auto project = with_dimensions({});
    project.frames[0].planes[0].position = "1000000 m";
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "out_of_range") == 1);
    CHECK(resolved.pieces.size() < project.frames[0].members.size());
}

TEST_CASE("senseless shop settings fall back to the default and are told", "[model][values]") {
    auto project = with_dimensions({});
    project.shop.kerf = "-1 in";
    project.shop.graduation = "0";
    project.shop.edge_distance = 0.5;
    const auto resolved = tests::resolved(project);
    CHECK(tests::count_of(resolved, "bad_setting") == 3);
    CHECK(resolved.shop.graduation == tests::inches_64(2));
}

TEST_CASE("a quarter-turned frame stands turned in the room", "[model][values]") {
    auto project = with_dimensions({});
    project.frames[0].quarter_turns = 1;
    project.frames[0].origin = {"10 in", "0", "5 in"};
    const auto resolved = tests::resolved(project);
    const auto& frame = resolved.frames[0];
    CHECK(model::to_room(frame, {tests::inches(3), 0, 0}) ==
          model::Point{tests::inches(10), tests::inches(3), tests::inches(5)});
    CHECK(model::direction_to_room(frame, {0, 1, 0}) == std::array<int, 3>{-1, 0, 0});
}

TEST_CASE("resolving twice gives the same", "[model][resolve]") {
    const auto project = with_dimensions({});
    const auto first = tests::resolved(project);
    const auto second = tests::resolved(project);
    CHECK(first.pieces == second.pieces);
    CHECK(first.holes == second.holes);
    CHECK(first.marks == second.marks);
    CHECK(first.findings == second.findings);
}
