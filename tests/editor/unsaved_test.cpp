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
    CHECK(std::filesystem::exists(folder.path() / "box.barwright.json"));
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

namespace {

// A saved box in that folder.
void save_box(HeadlessUi& ui, const TemporaryFolder& folder) {
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    ui.settle();
}

}  // namespace

TEST_CASE("leaving while a dimension is half typed takes it first, and asks", "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    save_box(ui, folder);
    ui.write("Lay out/width", "31");
    const auto intent =
        GENERATE(Intent::Kind::leave, Intent::Kind::begin_new, Intent::Kind::browse);
    editor::wish(ui.desk, {intent, {}});
    ui.settle();
    CHECK_FALSE(ui.desk.ui.wants_to_leave);
    CHECK(ui.has("Unsaved/Save"));
    CHECK(ui.shown("width") == "31");
}

TEST_CASE("leaving with a typed text that will not do asks, and staying keeps the text",
          "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    save_box(ui, folder);
    ui.write("Lay out/width", "31 +");
    ui.press('Q', key::left_control);
    CHECK_FALSE(ui.desk.ui.wants_to_leave);
    CHECK_THAT(ui.item("Unsaved/reasons").value, Catch::Contains("width"));
    CHECK_FALSE(ui.has("Unsaved/Save"));
    ui.click("Unsaved/Stay");
    REQUIRE(ui.desk.ui.hand.typed);
    CHECK(ui.desk.ui.hand.typed->text == "31 +");
    ui.press('Q', key::left_control);
    ui.click("Unsaved/Discard");
    CHECK(ui.desk.ui.wants_to_leave);
}

TEST_CASE("saving says what was typed and is not in the file", "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    save_box(ui, folder);
    ui.write("Lay out/width", "31 +");
    ui.press('S', key::left_control);
    REQUIRE(ui.desk.ui.notice);
    CHECK_THAT(ui.desk.ui.notice->text, Catch::Contains("not in it: width"));
}

TEST_CASE("closing the window over an open form asks, and staying brings the form back",
          "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    save_box(ui, folder);
    ui.click("Lay out/New dimension");
    ui.write("Dimension/name", "toe space");
    editor::wish(ui.desk, {Intent::Kind::leave, {}});
    ui.settle();
    CHECK_FALSE(ui.desk.ui.wants_to_leave);
    editor::wish(ui.desk, {Intent::Kind::leave, {}});  // asked twice
    ui.settle();
    ui.click("Unsaved/Stay");
    REQUIRE(std::holds_alternative<editor::DimensionForm>(ui.desk.ui.dialog));
    CHECK(std::get<editor::DimensionForm>(ui.desk.ui.dialog).name == "toe space");
    ui.write("Dimension/formula", "3");
    ui.click("Dimension/Put");
    CHECK(ui.shown("toe space") == "3");
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("a dropped file that cannot be read leaves the form that was open", "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    save_box(ui, folder);
    ui.click("Lay out/New dimension");
    ui.write("Dimension/name", "toe space");
    editor::wish(ui.desk, {Intent::Kind::open_file, folder.path() / "not there.json"});
    ui.settle();
    ui.click("Unsaved/Discard");
    ui.click("Trouble/Close");
    REQUIRE(std::holds_alternative<editor::DimensionForm>(ui.desk.ui.dialog));
    CHECK(std::get<editor::DimensionForm>(ui.desk.ui.dialog).name == "toe space");
}

TEST_CASE("of several dropped files the first is opened, and the window says so",
          "[editor][unsaved]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    save_box(ui, folder);
    editor::wish(ui.desk, {Intent::Kind::open_file, folder.path() / "box.json", 2});
    REQUIRE(ui.desk.ui.notice);
    CHECK_THAT(ui.desk.ui.notice->text, Catch::Contains("only this one"));
}
