#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/scan_loader.h"
#include "editor/scan_mesh_drawn.h"
#include "engine/files/whole_file.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <cmath>
#include <sstream>
#include <thread>

using Catch::Contains;
using tests::HeadlessUi;
namespace key = editor::key;
namespace fs = std::filesystem;

namespace {

// The inside of a box as a scan: looked at from within.
std::string box_as_obj(double x, double y, double z) {
    std::ostringstream text;
    for (int i = 0; i < 8; ++i) {
        text << "v " << ((i & 1) != 0 ? x : 0.0) << ' ' << ((i & 2) != 0 ? y : 0.0) << ' '
             << ((i & 4) != 0 ? z : 0.0) << '\n';
    }
    text << "f 1 2 4 3\nf 5 7 8 6\nf 1 5 6 2\nf 3 4 8 7\nf 1 3 7 5\nf 2 6 8 4\n";
    return text.str();
}

// A hilly floor of many triangles.
std::string floor_as_ply(int side) {
    std::ostringstream text;
    text << "ply\nformat ascii 1.0\nelement vertex " << side * side
         << "\nproperty float x\nproperty float y\nproperty float z\nelement face "
         << 2 * (side - 1) * (side - 1) << "\nproperty list uchar int vertex_indices\nend_header\n";
    for (int i = 0; i < side * side; ++i) {
        text << i % side << ' ' << i / side << ' ' << (i * 7) % 3 << '\n';
    }
    for (int i = 0; i + 1 < side; ++i) {
        for (int k = 0; k + 1 < side; ++k) {
            const int at = i * side + k;
            text << "3 " << at << ' ' << at + 1 << ' ' << at + side << "\n3 " << at + 1 << ' '
                 << at + side + 1 << ' ' << at + side << '\n';
        }
    }
    return text.str();
}

fs::path written(const fs::path& file, const std::string& text) {
    const auto done = engine::write_whole_file(file, text);
    if (!done) FAIL(engine::to_text(done.error()));
    return file;
}

const model::ScannedObstacle& scan_in(HeadlessUi& ui) {
    return std::get<model::ScannedObstacle>(ui.now().project->room.at(0).shape);
}

model::Project project_with_scan(const std::string& file) {
    model::Project project;
    model::ScannedObstacle scan{.file = file, .unit = engine::LengthUnit::metre};
    project.room = {{.name = "van", .shape = scan}};
    return project;
}

}  // namespace

TEST_CASE("a scan is read, its unit guessed, and put into the room", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.file = folder.path() / "van.json";
    editor::import_scan(ui.desk, written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9)));
    ui.settle();
    CHECK_THAT(ui.item("Scan/comes to").value, Contains("12 triangles"));
    ui.click("Scan/Put");
    ui.settle();
    REQUIRE(ui.now().project->room.size() == 1);
    CHECK(scan_in(ui).file == "van.obj");
    CHECK(scan_in(ui).unit == engine::LengthUnit::metre);
    CHECK(ui.desk.scans->size() == 1);
    REQUIRE(ui.desk.scans->begin()->second);
    CHECK((*ui.desk.scans->begin()->second)->is_closed);
    REQUIRE(editor::scene(ui.desk).fixed);
    const auto bounds = engine::bounds_of(*editor::scene(ui.desk).fixed);
    CHECK(bounds.hi.y == Approx(3200.0));
    ui.press('Z', key::left_control);
    CHECK(ui.now().project->room.empty());
}

TEST_CASE("a scan that is not a mesh is told in its form, which can only be cancelled",
          "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    editor::import_scan(ui.desk, written(folder.path() / "van.stl", "no mesh at all"));
    ui.settle();
    CHECK_THAT(ui.item("Scan/trouble").value, Contains("van.stl"));
    CHECK_FALSE(ui.item("Scan/Put").enabled);
    ui.click("Scan/Cancel");
    ui.settle();
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    CHECK(ui.now().project->room.empty());
}

TEST_CASE("reading a large scan can be cancelled at any time", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    editor::import_scan(ui.desk, written(folder.path() / "floor.ply", floor_as_ply(300)));
    ui.frame();
    ui.frame();
    if (!ui.has("Scan/progress")) return;  // it was read already
    ui.press(key::escape);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    CHECK(ui.now().project->room.empty());
}

TEST_CASE("work in the background tells how far it is, and stops when it is cancelled",
          "[editor][scan]") {
    std::atomic<bool> may_go_on{false};
    editor::BackgroundWork<int> work([&](const auto& go_on) -> engine::Result<int> {
        while (go_on(0.25)) {
            if (may_go_on) return 7;
        }
        return engine::Error{engine::ErrorCode::cancelled, "", "stopped"};
    });
    while (work.done() == 0.0) std::this_thread::yield();
    CHECK(work.done() == 0.25);
    CHECK_FALSE(work.is_finished());
    work.cancel();
    while (!work.is_finished()) std::this_thread::yield();
    CHECK(work.result().error().code == engine::ErrorCode::cancelled);
}

TEST_CASE("opening a project reads its scans in the background", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    fs::create_directory(folder.path() / "scans");
    written(folder.path() / "scans" / "van.obj", box_as_obj(1.8, 3.2, 1.9));
    HeadlessUi ui;
    editor::replace_project(ui.desk, project_with_scan("scans/van.obj"), folder.path() / "a.json");
    editor::run_command(ui.desk, "place.measure");
    ui.settle();
    CHECK(ui.desk.scans->size() == 1);
    CHECK_FALSE(ui.has("Measure/of van: scan_not_read"));
    editor::replace_project(ui.desk, {}, {});
    CHECK(ui.desk.scans->empty());
}

TEST_CASE("a missing or broken scan is a finding with the reason, and nothing waits for it",
          "[editor][scan]") {
    const tests::TemporaryFolder folder;
    written(folder.path() / "bad.ply", "ply\nformat ascii 1.0\nelement vertex many\n");
    for (const char* file : {"missing.ply", "bad.ply"}) {
        HeadlessUi ui;
        editor::replace_project(ui.desk, project_with_scan(file), folder.path() / "a.json");
        editor::run_command(ui.desk, "place.measure");
        ui.settle();
        CHECK_THAT(ui.item("Measure/of van: scan_not_read").value, Contains(file));
        CHECK_FALSE(ui.desk.scans->begin()->second);
        CHECK_FALSE(ui.desk.ui.goes_on);
    }
}

TEST_CASE("the browser shows scans and no projects when a scan is asked for", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    written(folder.path() / "van.GLB", "x");
    written(folder.path() / "van.json", "{}");
    const auto browser = editor::browser_for(editor::BrowseFor::scan, folder.path());
    REQUIRE(browser.entries.size() == 1);
    CHECK(browser.entries[0].name == "van.GLB");
}

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

TEST_CASE("a scan of many triangles is drawn by fewer, within its own bounds", "[editor][scan]") {
    constexpr int side = 460;
    std::vector<engine::ScanPoint> points;
    std::vector<engine::ScanTriangle> triangles;
    for (std::uint32_t i = 0; i < side * side; ++i) {
        points.push_back({static_cast<float>(i % side), static_cast<float>(i / side), 0.0F});
    }
    for (std::uint32_t i = 0; i + 1 < side; ++i) {
        for (std::uint32_t k = 0; k + 1 < side; ++k) {
            const std::uint32_t at = i * side + k;
            triangles.push_back({at, at + 1, at + side});
            triangles.push_back({at + 1, at + side + 1, at + side});
        }
    }
    REQUIRE(triangles.size() > editor::most_drawn_triangles);
    const auto mesh = editor::drawn_scan(points, triangles);
    CHECK(mesh.triangles.size() / 3 <= editor::most_drawn_triangles);
    CHECK(mesh.triangles.size() / 3 > editor::most_drawn_triangles / 10);
    for (const auto& vertex : mesh.vertices) {
        CHECK(vertex.position[0] <= static_cast<float>(side));
        CHECK(std::abs(vertex.normal[2]) == Approx(1.0F));
    }
    for (const auto corner : mesh.triangles) REQUIRE(corner < mesh.vertices.size());
}
