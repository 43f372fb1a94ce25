#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/scan_loader.h"

#include "tests/editor/headless_ui.h"
#include "tests/editor/scan_files.h"

#include <catch2/catch.hpp>

using Catch::Contains;
using tests::HeadlessUi;
namespace key = editor::key;

namespace {

using tests::box_as_obj;
using tests::project_with_scan;
using tests::written;

const model::ScannedObstacle& scan_in(HeadlessUi& ui) {
    return std::get<model::ScannedObstacle>(ui.now().project->room.at(0).shape);
}

// A scan in the room, looked at in Measure.
void show_scan(HeadlessUi& ui, const tests::TemporaryFolder& folder) {
    written(folder.path() / "van.obj", box_as_obj(2.0, 2.0, 2.0));
    editor::replace_project(ui.desk, project_with_scan("van.obj"), folder.path() / "a.json");
    editor::run_command(ui.desk, "place.measure");
    ui.settle();
}

void open_form(HeadlessUi& ui) {
    ui.click("Measure/obstacle van");
    ui.settle();
}

struct Middle {
    float x = 0.0F;
    float y = 0.0F;
};

Middle middle_of_view(HeadlessUi& ui) {
    const auto& view = ui.item("View/picture");
    return {(view.left + view.right) / 2, (view.top + view.bottom) / 2};
}

}  // namespace

TEST_CASE("three points put a scan where the room begins", "[editor][scan]") {
    // The scan's axes: its x looks up, its y across the van, its z along it.
    const std::vector<engine::Vector> points{
        {5.0, 100.0, -20.0}, {5.0, 900.0, -20.0}, {5.0, 300.0, 700.0}};
    const auto placed = editor::placed_by({.file = "van.ply"}, points);
    REQUIRE(placed);
    model::Project project;
    project.room = {{.name = "van", .shape = *placed}};
    const auto derived = editor::derive(std::make_shared<const model::Project>(project), 1,
                                        *tests::test_catalogue());
    model::ScanLibrary library;
    const std::vector<engine::ScanPoint> corners{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}};
    const std::vector<engine::ScanTriangle> triangles{{0, 1, 2}};
    const auto tree = engine::TriangleTree::built(std::span<const engine::ScanPoint>(corners),
                                                  std::span<const engine::ScanTriangle>(triangles),
                                                  [](double) { return true; });
    REQUIRE(tree);
    library.emplace(model::scan_key(*placed),
                    std::make_shared<const model::Scan>(model::Scan{.tree = *tree}));
    const auto scans = editor::placed_scans(derived, library);
    REQUIRE(scans.size() == 1);
    const std::vector<engine::Vector> wanted{{0, 0, 0}, {800, 0, 0}, {200, 720, 0}};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto at = engine::point_in(scans[0].place, points[i]);
        for (std::size_t k = 0; k < 3; ++k)
            CHECK(at[k] == Approx(wanted[i][k]).epsilon(0).margin(1e-3));
    }
    CHECK_FALSE(editor::placed_by({}, {{0, 0, 0}, {1, 1, 0}, {2, 2, 0}}));
    CHECK_FALSE(editor::placed_by({}, {{0, 0, 0}, {0, 0, 0}, {2, 2, 0}}));
}

TEST_CASE("the view picks three points of a scan, and Escape leaves it", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    written(folder.path() / "van.obj", box_as_obj(2.0, 2.0, 2.0));
    editor::replace_project(ui.desk, project_with_scan("van.obj"), folder.path() / "a.json");
    editor::run_command(ui.desk, "place.measure");
    ui.settle();
    ui.click("Measure/obstacle van");
    ui.settle();
    ui.click("Obstacle/Place by points");
    ui.settle();
    REQUIRE(ui.desk.ui.placing);
    CHECK_THAT(ui.item("View/placing").value, Contains("1 of 3"));
    ui.press(key::escape);
    CHECK_FALSE(ui.desk.ui.placing);
    ui.desk.ui.placing = editor::ScanPlacing{"van", {}};
    ui.settle();
    const auto& view = ui.item("View/picture");
    const float x = (view.left + view.right) / 2;
    const float y = (view.top + view.bottom) / 2;
    ui.click_at(x, y);
    REQUIRE(ui.desk.ui.placing);
    CHECK(ui.desk.ui.placing->points.size() == 1);
    ui.click_at(x + 60, y + 10);
    ui.click_at(x + 10, y + 60);
    CHECK_FALSE(ui.desk.ui.placing);
    CHECK(scan_in(ui).turn[0] != "0");
    CHECK(ui.desk.history.undo_label() == "Place van by three points");
}

TEST_CASE("what the form says is put before three points are picked", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    show_scan(ui, folder);
    open_form(ui);
    ui.write("Obstacle/name", "bus");
    ui.write("Obstacle/clearance", "1/2");
    ui.click("Obstacle/Place by points");
    ui.settle();
    const auto& obstacle = ui.now().project->room.at(0);
    CHECK(obstacle.name == "bus");
    CHECK(obstacle.clearance == "1/2");
    REQUIRE(ui.desk.ui.placing);
    CHECK(ui.desk.ui.placing->obstacle == "bus");
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("a form that cannot be put stays, instead of going on to three points",
          "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    show_scan(ui, folder);
    open_form(ui);
    ui.write("Obstacle/clearance", "half");
    ui.click("Obstacle/Place by points");
    ui.settle();
    CHECK_FALSE(ui.desk.ui.placing);
    CHECK(ui.has("Obstacle/trouble"));
    CHECK(std::get<editor::ObstacleForm>(ui.desk.ui.dialog).obstacle.clearance == "half");
}

TEST_CASE("a double click is one point, and leaves the view as it is", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    show_scan(ui, folder);
    ui.desk.ui.placing = editor::ScanPlacing{"van"};
    ui.settle();
    ui.double_click("View/picture");
    REQUIRE(ui.desk.ui.placing);
    CHECK(ui.desk.ui.placing->points.size() == 1);
    CHECK_THAT(ui.item("View/placing").value, Contains("first point once more"));
    CHECK_THAT(ui.item("View/placing").value, Contains("2 of 3"));
    const auto [x, y] = middle_of_view(ui);
    ui.click_at(x + 60, y + 10);
    REQUIRE(ui.desk.ui.placing);
    CHECK(ui.desk.ui.placing->points.size() == 2);
    CHECK(ui.desk.ui.placing->trouble.empty());
}

TEST_CASE("a point in one line with the others is refused with the reason", "[editor][scan]") {
    editor::ScanPlacing placing{"van"};
    editor::pick(placing, {0, 0, 0});
    editor::pick(placing, {0.5, 0, 0});
    CHECK(placing.points.size() == 1);
    CHECK_FALSE(placing.trouble.empty());
    editor::pick(placing, {500, 0, 0});
    CHECK(placing.trouble.empty());
    editor::pick(placing, {900, 0, 0});
    CHECK(placing.points.size() == 2);
    CHECK_THAT(placing.trouble, Contains("one line"));
    editor::pick(placing, {900, 300, 0});
    CHECK(placing.points.size() == 3);
    CHECK(placing.trouble.empty());
}

TEST_CASE("a click beside the scan says so", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    show_scan(ui, folder);
    ui.desk.ui.placing = editor::ScanPlacing{"van"};
    ui.settle();
    const auto& view = ui.item("View/picture");
    ui.click_at(view.left + 6, view.bottom - 90);
    REQUIRE(ui.desk.ui.placing);
    CHECK(ui.desk.ui.placing->points.empty());
    CHECK_THAT(ui.item("View/placing").value, Contains("nothing of van"));
}

TEST_CASE("picking points ends when its place is left, and when its scan goes", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    show_scan(ui, folder);
    ui.desk.ui.placing = editor::ScanPlacing{"van"};
    ui.press('2', key::left_control);
    CHECK(ui.desk.ui.place == editor::Place::lay_out);
    CHECK_FALSE(ui.desk.ui.placing);
    editor::run_command(ui.desk, "place.measure");
    ui.desk.ui.placing = editor::ScanPlacing{"van"};
    ui.settle();
    REQUIRE(ui.desk.ui.placing);
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::RemoveObstacle{"van"})));
    ui.settle();
    CHECK_FALSE(ui.desk.ui.placing);
}

TEST_CASE("what is to be clicked is to be read in a narrow view too", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui(720, 480);
    show_scan(ui, folder);
    ui.desk.ui.placing = editor::ScanPlacing{"van"};
    ui.settle();
    const auto& view = ui.item("View/picture");
    const auto& words = ui.item("View/placing");
    CHECK(words.left >= view.left);
    CHECK(words.right <= view.right);
}
