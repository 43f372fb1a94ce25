#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "editor/scan_loader.h"
#include "editor/scan_mesh_drawn.h"

#include "tests/editor/headless_ui.h"
#include "tests/editor/scan_files.h"

#include <catch2/catch.hpp>

#include <atomic>
#include <cmath>
#include <new>
#include <stdexcept>
#include <thread>

using Catch::Contains;
using tests::HeadlessUi;
namespace key = editor::key;
namespace fs = std::filesystem;

namespace {

using tests::box_as_obj;
using tests::project_with_scan;
using tests::written;

const model::ScannedObstacle& scan_in(HeadlessUi& ui) {
    return std::get<model::ScannedObstacle>(ui.now().project->room.at(0).shape);
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

TEST_CASE("an import can be cancelled while its file is read", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    std::atomic<bool> is_reading{false};
    editor::import_scan(ui.desk, written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9)));
    auto& form = std::get<editor::ScanForm>(ui.desk.ui.dialog);
    form.reading = std::make_shared<editor::ScanReading>(
        [&](const auto& go_on) -> engine::Result<editor::ReadMesh> {
            while (go_on(0.5)) is_reading = true;
            return engine::Error{engine::ErrorCode::cancelled, "", "stopped"};
        });
    while (!is_reading) std::this_thread::yield();
    for (int i = 0; i < 4; ++i) ui.frame();
    CHECK(ui.item("Scan/progress").value == "50");
    CHECK_FALSE(ui.item("Scan/Put").enabled);
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
    const auto drawn = editor::drawn_scan(points, triangles, [] { return true; });
    REQUIRE(drawn);
    const auto& mesh = *drawn;
    CHECK(mesh.triangles.size() / 3 <= editor::most_drawn_triangles);
    CHECK(mesh.triangles.size() / 3 > editor::most_drawn_triangles / 10);
    for (const auto& vertex : mesh.vertices) {
        CHECK(vertex.position[0] <= static_cast<float>(side));
        CHECK(std::abs(vertex.normal[2]) == Approx(1.0F));
    }
    for (const auto corner : mesh.triangles) REQUIRE(corner < mesh.vertices.size());
}

TEST_CASE("making a scan to be drawn asks all along whether it goes on", "[editor][scan]") {
    constexpr int side = 460;
    std::vector<engine::ScanPoint> points;
    std::vector<engine::ScanTriangle> triangles;
    for (std::uint32_t i = 0; i < side * side; ++i) {
        points.push_back({static_cast<float>(i % side), static_cast<float>(i / side), 0.0F});
        triangles.push_back({i, (i + 1) % (side * side), (i + side) % (side * side)});
        triangles.push_back({(i + 1) % (side * side), (i + side) % (side * side), i});
    }
    int asked = 0;
    const auto all = editor::drawn_scan(points, triangles, [&] {
        ++asked;
        return true;
    });
    REQUIRE(all);
    REQUIRE(asked > 8);  // more often than once for each time that it is simplified
    for (int stops = 1; stops <= asked; ++stops) {
        int left = stops;
        CHECK_FALSE(editor::drawn_scan(points, triangles, [&] { return --left > 0; }));
    }
}

TEST_CASE("what work in the background throws becomes an error", "[editor][scan]") {
    editor::BackgroundWork<int> greedy(
        [](const auto&) -> engine::Result<int> { throw std::bad_alloc(); });
    editor::BackgroundWork<int> wrong(
        [](const auto&) -> engine::Result<int> { throw std::length_error("too long"); });
    while (!greedy.is_finished() || !wrong.is_finished()) std::this_thread::yield();
    CHECK_THAT(engine::to_text(greedy.result().error()), Contains("not enough memory"));
    CHECK_THAT(engine::to_text(wrong.result().error()), Contains("too long"));
}
