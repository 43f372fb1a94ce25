#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using editor::Intent;
using tests::HeadlessUi;
using tests::TemporaryFolder;
namespace key = editor::key;

TEST_CASE("leaving with everything saved asks nothing", "[editor][unsaved]") {
    HeadlessUi ui;
    ui.press('Q', key::left_control);
    CHECK(ui.desk.ui.wants_to_leave);
}

TEST_CASE("leaving with unsaved changes asks, and staying stays", "[editor][unsaved]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('Q', key::left_control);
    CHECK_FALSE(ui.desk.ui.wants_to_leave);
    ui.click("Unsaved/Stay");
    CHECK_FALSE(ui.desk.ui.wants_to_leave);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
}

TEST_CASE("leaving without saving leaves", "[editor][unsaved]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('Q', key::left_control);
    ui.click("Unsaved/Discard");
    CHECK(ui.desk.ui.wants_to_leave);
}

TEST_CASE("saving from the question asks where, saves, and then leaves", "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('Q', key::left_control);
    ui.click("Unsaved/Save");
    REQUIRE(std::holds_alternative<editor::FileBrowser>(ui.desk.ui.dialog));
    ui.fill("Files/Folder", folder.path().string());
    ui.fill("Files/Name", "box");
    CHECK(std::filesystem::exists(folder.path() / "box.json"));
    CHECK(ui.desk.ui.wants_to_leave);
}

TEST_CASE("putting the browser away after the question leaves nothing undone",
          "[editor][unsaved]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('Q', key::left_control);
    ui.click("Unsaved/Save");
    ui.click("Files/Cancel");
    CHECK_FALSE(ui.desk.ui.wants_to_leave);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
}

TEST_CASE("a file dropped over unsaved changes asks first", "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    ui.settle();
    ui.fill("Lay out/width", "40");
    editor::wish(ui.desk, {Intent::Kind::open_file, folder.path() / "box.json"});
    ui.settle();
    CHECK(ui.shown("width") == "40");
    ui.click("Unsaved/Discard");
    CHECK(ui.shown("width") == "24");
}

TEST_CASE("a new project over unsaved changes asks first", "[editor][unsaved]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('N', key::left_control);
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
    ui.click("Unsaved/Discard");
    CHECK(editor::project_of(ui.desk).frames.empty());
}

TEST_CASE("undo back to what was saved counts as saved", "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    ui.settle();
    ui.fill("Lay out/width", "40");
    CHECK_FALSE(ui.desk.history.is_saved());
    ui.press('Z', key::left_control);
    CHECK(ui.desk.history.is_saved());
}
