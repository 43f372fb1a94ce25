// Scans that are read once more, from elsewhere, in another unit, or several at once.
#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/dropped_files.h"
#include "editor/keys.h"
#include "editor/room_scene.h"
#include "editor/scan_loader.h"
#include "editor/scan_paths.h"
#include "model/project/project_json.h"

#include "tests/editor/headless_ui.h"
#include "tests/editor/scan_files.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>
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

void open_with_scan(HeadlessUi& ui, const fs::path& folder, const std::string& file) {
    editor::replace_project(ui.desk, project_with_scan(file), folder / "a.json");
    editor::run_command(ui.desk, "place.measure");
    ui.settle();
}

std::string text_of(const fs::path& file) {
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
}

// mm, of the scan as it is drawn.
double drawn_length(HeadlessUi& ui) {
    const auto fixed = editor::scene(ui.desk).fixed;
    REQUIRE(fixed);
    const auto bounds = engine::bounds_of(*fixed);
    return bounds.hi.y - bounds.lo.y;
}

}  // namespace

TEST_CASE("a scan that could not be read is read again once it is there", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    open_with_scan(ui, folder.path(), "van.obj");
    REQUIRE(ui.has("Measure/of van: scan_not_read"));
    written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9));
    ui.settle();
    CHECK(editor::has_unread_scans(ui.desk));  // nothing looks at the file all the time
    ui.click("Measure/Read again");
    ui.settle();
    CHECK(ui.desk.scans->size() == 1);
    CHECK_FALSE(editor::has_unread_scans(ui.desk));
    CHECK_FALSE(ui.has("Measure/of van: scan_not_read"));
    CHECK_FALSE(editor::find_command("room.read_again")->enabled(ui.desk));
}

TEST_CASE("a scan whose reading was stopped is read again when it is asked for", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9));
    open_with_scan(ui, folder.path(), "missing.obj");
    auto scan = scan_in(ui);
    scan.file = "van.obj";
    // Reading that goes on until it is stopped.
    auto& loader = *ui.desk.scan_loader;
    loader.key = model::scan_key(scan);
    loader.work = std::make_unique<editor::BackgroundWork<editor::LoadedScan>>(
        [](const auto& go_on) -> engine::Result<editor::LoadedScan> {
            while (go_on(0.3)) std::this_thread::yield();
            return engine::Error{engine::ErrorCode::cancelled, "", "reading was stopped"};
        });
    REQUIRE(editor::submit(
        ui.desk, editor::change_of(model::PutObstacle{{.name = "van", .shape = scan}, "van"})));
    for (int i = 0; i < 4; ++i) ui.frame();
    CHECK_THAT(ui.item("Measure/reading").value, Contains("van.obj"));
    editor::run_command(ui.desk, "room.stop_reading");
    ui.settle();
    CHECK_FALSE(ui.desk.ui.goes_on);
    CHECK_THAT(ui.item("Measure/of van: scan_not_read").value, Contains("stopped"));
    ui.click("Measure/Read again");
    ui.settle();
    REQUIRE(ui.desk.scans->contains(model::scan_key(scan)));
    CHECK(ui.desk.scans->find(model::scan_key(scan))->second);
}

TEST_CASE("a scan that could not be read is in the room once it is brought in again",
          "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    open_with_scan(ui, folder.path(), "van.obj");
    REQUIRE(editor::has_unread_scans(ui.desk));
    editor::import_scan(ui.desk, written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9)));
    ui.settle();
    ui.click("Scan/Put");
    ui.settle();
    CHECK_FALSE(editor::has_unread_scans(ui.desk));
    CHECK(ui.desk.scans->size() == 1);
}

TEST_CASE("the import's form says which file is read, and no other can be said", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    ui.desk.file = folder.path() / "a.json";
    editor::import_scan(ui.desk, written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9)));
    ui.settle();
    REQUIRE(ui.has("Scan/comes to"));
    CHECK_FALSE(ui.has("Scan/file"));
    ui.click("Scan/Put");
    ui.settle();
    CHECK(scan_in(ui).file == "van.obj");
}

TEST_CASE("a scan's other unit is seen in its form, and when it is changed", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9));
    open_with_scan(ui, folder.path(), "van.obj");
    ui.click("Measure/obstacle van");
    ui.settle();
    CHECK_FALSE(ui.has("Obstacle/finding scan_not_read"));
    ui.click("Obstacle/cm");
    ui.settle();
    CHECK_FALSE(ui.has("Obstacle/finding scan_not_read"));
    CHECK(ui.desk.scans->size() == 2);
    ui.click("Obstacle/Put");
    ui.settle();
    CHECK(drawn_length(ui) == Approx(32.0).epsilon(1e-4));
}

TEST_CASE("a form tells when its scan cannot be read in this unit, and why", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    written(folder.path() / "bad.ply", "ply\nformat ascii 1.0\nelement vertex many\n");
    open_with_scan(ui, folder.path(), "bad.ply");
    ui.click("Measure/obstacle van");
    ui.settle();
    ui.click("Obstacle/in");
    ui.settle();
    CHECK_THAT(ui.item("Obstacle/finding scan_not_read").value, Contains("bad.ply"));
    CHECK_FALSE(ui.desk.ui.goes_on);
}

TEST_CASE("what a form would come to follows a scan that is read meanwhile", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    open_with_scan(ui, folder.path(), "van.obj");
    ui.click("Measure/obstacle van");
    ui.settle();
    REQUIRE(ui.has("Obstacle/finding scan_not_read"));
    written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9));
    editor::read_scans_again(ui.desk);
    ui.settle();
    CHECK_FALSE(ui.has("Obstacle/finding scan_not_read"));
}

TEST_CASE("a scan is still picked as itself once an obstacle before it is gone", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    written(folder.path() / "van.obj", box_as_obj(1.8, 3.2, 1.9));
    HeadlessUi ui;
    auto project = project_with_scan("van.obj");
    project.room.insert(
        project.room.begin(),
        {.name = "box", .shape = model::BoxObstacle{{"0", "0", "0"}, {"1", "1", "1"}}});
    editor::replace_project(ui.desk, project, folder.path() / "a.json");
    ui.settle();
    const auto pick_of_scan = [&] {
        const auto fixed = editor::scene(ui.desk).fixed;
        REQUIRE(fixed);
        REQUIRE(fixed->items.size() == 1);
        return editor::obstacle_of_pick(fixed->items[0].pick_id);
    };
    REQUIRE(pick_of_scan() == 1U);
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::RemoveObstacle{"box"})));
    ui.settle();
    CHECK(pick_of_scan() == 0U);
}

TEST_CASE("a project saved in another folder still finds its scans", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    fs::create_directory(folder.path() / "here");
    fs::create_directory(folder.path() / "there");
    const auto scan = written(folder.path() / "here" / "van.obj", box_as_obj(1.8, 3.2, 1.9));
    HeadlessUi ui;
    open_with_scan(ui, folder.path() / "here", "van.obj");
    REQUIRE(ui.desk.scans->size() == 1);
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetTitle{"Another", ""})));
    REQUIRE(editor::save_to(ui.desk, folder.path() / "there" / "b.json"));
    ui.settle();
    CHECK(editor::scan_path(ui.desk, scan_in(ui).file) == scan);
    CHECK(ui.desk.history.is_saved());
    CHECK_FALSE(editor::has_unread_scans(ui.desk));
    const auto saved = model::read_project_json(text_of(folder.path() / "there" / "b.json"));
    REQUIRE(saved);
    CHECK(*saved == *ui.now().project);
    ui.press('Z', key::left_control);
    CHECK(editor::scan_path(ui.desk, scan_in(ui).file) == scan);
    CHECK(ui.desk.scans->size() == 1);
}

TEST_CASE("a project that is saved first names its scans from its own folder", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    fs::create_directory(folder.path() / "scans");
    HeadlessUi ui;
    editor::import_scan(ui.desk,
                        written(folder.path() / "scans" / "van.obj", box_as_obj(1.8, 3.2, 1.9)));
    ui.settle();
    ui.click("Scan/Put");
    ui.settle();
    REQUIRE(fs::path(scan_in(ui).file).is_absolute());
    REQUIRE(editor::save_to(ui.desk, folder.path() / "van.json"));
    ui.settle();
    CHECK(scan_in(ui).file == "scans/van.obj");
    CHECK(ui.desk.history.is_saved());
    CHECK_THAT(text_of(folder.path() / "van.json"), Contains("\"scans/van.obj\""));
    CHECK(ui.desk.scans->contains(model::scan_key(scan_in(ui))));
    REQUIRE(editor::scene(ui.desk).fixed);
}

TEST_CASE("scans that are dropped come in one after another", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    const auto a = written(folder.path() / "a.obj", box_as_obj(1.8, 3.2, 1.9));
    const auto b = written(folder.path() / "b.obj", box_as_obj(1.0, 2.0, 1.0));
    const auto c = written(folder.path() / "c.obj", box_as_obj(1.0, 1.0, 1.0));
    editor::take_dropped(ui.desk, {a, b, c, folder.path() / "notes.txt"});
    ui.settle();
    CHECK_THAT(ui.item("Scan/waiting").value, Contains("b.obj, c.obj"));
    REQUIRE(ui.desk.ui.notice);
    CHECK_THAT(ui.desk.ui.notice->text, Contains("1 other is left out"));
    ui.click("Scan/Put");
    ui.settle();
    CHECK_THAT(ui.item("Scan/waiting").value, Contains("c.obj"));
    ui.click("Scan/Cancel");
    ui.settle();
    CHECK_FALSE(ui.has("Scan/waiting"));
    ui.click("Scan/Put");
    ui.settle();
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    REQUIRE(ui.now().project->room.size() == 2);
    CHECK_THAT(scan_in(ui).file, Contains("a.obj"));
    CHECK(ui.now().project->room[0].name != ui.now().project->room[1].name);
    CHECK(ui.desk.scans->size() == 2);
}

TEST_CASE("a dropped scan asks for its unit, a dropped project is opened", "[editor][scan]") {
    const tests::TemporaryFolder folder;
    HeadlessUi ui;
    editor::take_dropped(ui.desk, {});
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    editor::take_dropped(ui.desk, {written(folder.path() / "a.obj", box_as_obj(1.8, 3.2, 1.9))});
    CHECK(std::holds_alternative<editor::ScanForm>(ui.desk.ui.dialog));
    ui.settle();
    ui.click("Scan/Cancel");
    ui.settle();
    model::Project project;
    project.name = "Dropped";
    editor::take_dropped(ui.desk, {written(folder.path() / "b.json", model::to_json_text(project)),
                                   folder.path() / "c.json"});
    CHECK(editor::title_of(ui.desk) == "Dropped");
    REQUIRE(ui.desk.ui.notice);
    CHECK_THAT(ui.desk.ui.notice->text, Contains("only this one"));
}
