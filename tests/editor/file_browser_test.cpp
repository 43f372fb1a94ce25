#include "editor/dialogs/file_browser.h"

#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <fstream>

using editor::BrowseFor;
using tests::HeadlessUi;
using tests::TemporaryFolder;
namespace fs = std::filesystem;
namespace key = editor::key;

namespace {

void put_file(const fs::path& file, const std::string& text = "{}") { std::ofstream(file) << text; }

std::vector<std::string> names(const editor::FileBrowser& browser) {
    std::vector<std::string> all;
    for (const auto& entry : browser.entries) all.push_back(entry.name);
    return all;
}

}  // namespace

TEST_CASE("folders come first, other files only when they are asked for", "[editor][browser]") {
    const TemporaryFolder folder;
    fs::create_directory(folder.path() / "zebra");
    put_file(folder.path() / "bench.json");
    put_file(folder.path() / "Attic.json");
    put_file(folder.path() / "photo.jpg");
    put_file(folder.path() / ".hidden.json");
    auto browser = editor::browser_for(BrowseFor::opening, folder.path());
    CHECK(names(browser) == std::vector<std::string>{"zebra", "Attic.json", "bench.json"});
    browser.shows_all_files = true;
    editor::read_again(browser);
    CHECK(names(browser) ==
          std::vector<std::string>{"zebra", "Attic.json", "bench.json", "photo.jpg"});
}

TEST_CASE("a folder that is not there opens the nearest one above it", "[editor][browser]") {
    const TemporaryFolder folder;
    const auto browser = editor::browser_for(BrowseFor::opening, folder.path() / "no" / "such");
    CHECK(browser.folder == folder.path());
}

TEST_CASE("a typed folder is gone to, a typed file is taken", "[editor][browser]") {
    const TemporaryFolder folder;
    fs::create_directory(folder.path() / "inner");
    put_file(folder.path() / "inner" / "bench.json");
    auto browser = editor::browser_for(BrowseFor::opening, folder.path());
    browser.typed_folder = (folder.path() / "inner").string();
    CHECK_FALSE(editor::take_typed_path(browser));
    CHECK(browser.folder == folder.path() / "inner");
    browser.typed_folder = "bench.json";
    CHECK(editor::take_typed_path(browser) == folder.path() / "inner" / "bench.json");
}

TEST_CASE("a typed folder that is not there can be made", "[editor][browser]") {
    const TemporaryFolder folder;
    auto browser = editor::browser_for(BrowseFor::exporting, folder.path());
    browser.typed_folder = (folder.path() / "new" / "schedules").string();
    CHECK_FALSE(editor::accept(browser));
    REQUIRE(browser.to_make);
    editor::make_typed_folder(browser);
    CHECK(fs::is_directory(folder.path() / "new" / "schedules"));
    CHECK(editor::accept(browser) == folder.path() / "new" / "schedules");
}

TEST_CASE("a folder that cannot be made is said, and nothing is taken", "[editor][browser]") {
    const TemporaryFolder folder;
    put_file(folder.path() / "file");
    auto browser = editor::browser_for(BrowseFor::exporting, folder.path());
    browser.typed_folder = (folder.path() / "file" / "below").string();
    CHECK_FALSE(editor::accept(browser));
    editor::make_typed_folder(browser);
    CHECK_FALSE(browser.trouble.empty());
}

TEST_CASE("saving asks before it writes over a file", "[editor][browser]") {
    const TemporaryFolder folder;
    put_file(folder.path() / "bench.barwright.json");
    auto browser = editor::browser_for(BrowseFor::saving, folder.path(), "bench");
    CHECK_FALSE(editor::accept(browser));
    CHECK(browser.overwrites == folder.path() / "bench.barwright.json");
    CHECK(editor::accept(browser) == folder.path() / "bench.barwright.json");
}

TEST_CASE("a saved name gets the ending of a project", "[editor][browser]") {
    const TemporaryFolder folder;
    auto browser = editor::browser_for(BrowseFor::saving, folder.path(), "bench");
    CHECK(editor::accept(browser) == folder.path() / "bench.barwright.json");
    browser.file_name = "Bench.JSON";
    CHECK(editor::accept(browser) == folder.path() / "Bench.JSON");
    browser.file_name = "a/b";
    CHECK_FALSE(editor::accept(browser));
    browser.file_name = "";
    CHECK_FALSE(editor::accept(browser));
}

TEST_CASE("a project is opened by mouse from the list", "[editor][browser]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    editor::run_command(ui.desk, "project.new");
    REQUIRE(editor::project_of(ui.desk).frames.empty());
    ui.desk.ui.dialog = editor::browser_for(BrowseFor::opening, folder.path());
    ui.settle();
    ui.double_click("Files/entry box.json");
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("a project is opened by keyboard from the list", "[editor][browser]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    fs::create_directory(folder.path() / "inner");
    REQUIRE(editor::save_to(ui.desk, folder.path() / "inner" / "box.json"));
    editor::run_command(ui.desk, "project.new");
    ui.desk.ui.dialog = editor::browser_for(BrowseFor::opening, folder.path());
    ui.settle();
    ui.press(key::down);
    ui.press(key::enter);
    ui.press(key::down);
    ui.press(key::enter);
    CHECK(ui.desk.file == folder.path() / "inner" / "box.json");
}

TEST_CASE("escape puts the browser away and changes nothing", "[editor][browser]") {
    HeadlessUi ui;
    ui.press('O', key::left_control);
    REQUIRE(std::holds_alternative<editor::FileBrowser>(ui.desk.ui.dialog));
    ui.press(key::escape);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("a new project is saved under a name by which the desktop knows it",
          "[editor][browser]") {
    CHECK(editor::with_project_ending("parts box") == "parts box.barwright.json");
    CHECK(editor::with_project_ending("parts box.barwright") == "parts box.barwright.json");
    CHECK(editor::with_project_ending("parts box.json") == "parts box.json");
    CHECK(editor::with_project_ending("van.barwright.json") == "van.barwright.json");
    CHECK(editor::is_project_file("van.barwright.json"));
}
