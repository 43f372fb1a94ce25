#include "editor/desk_files.h"

#include "editor/commands.h"
#include "editor/keys.h"
#include "engine/files/whole_file.h"
#include "model/buying/buying_files.h"
#include "model/schedule/write_all.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>

using tests::HeadlessUi;
using tests::TemporaryFolder;
namespace fs = std::filesystem;
namespace key = editor::key;

TEST_CASE("what is saved is what is opened again", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto saved = editor::project_of(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    CHECK(ui.desk.history.is_saved());
    HeadlessUi* const first = &ui;
    editor::run_command(first->desk, "project.new");
    REQUIRE(editor::open_file(ui.desk, folder.path() / "box.json"));
    CHECK(editor::project_of(ui.desk) == saved);
    CHECK(ui.desk.history.is_saved());
    CHECK_FALSE(ui.desk.history.can_undo());
}

TEST_CASE("what is saved in the file that it came from stays in that file", "[editor][files]") {
    const TemporaryFolder folder;
    const auto file = folder.path() / "box.json";
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, file));
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetTitle{"another name", ""})));
    editor::run_command(ui.desk, "project.save");
    ui.settle();
    CHECK(ui.desk.file == file);
    CHECK(ui.desk.history.is_saved());
    CHECK_THAT(ui.desk.ui.notice->text, Catch::Contains("box.json"));
}

TEST_CASE("a photograph opened as a project is told, and the present project stays",
          "[editor][files]") {
    const TemporaryFolder folder;
    const fs::path photo = folder.path() / "van.json";
    std::ofstream(photo, std::ios::binary) << "\xFF\xD8\xFF\xE0\x00\x10JFIF\x00 not a project";
    HeadlessUi ui;
    tests::start_box(ui.desk);
    const auto before = ui.desk.history.now();
    CHECK_FALSE(editor::open_file(ui.desk, photo));
    ui.settle();
    CHECK_THAT(ui.item("Trouble/text").value, Catch::Contains("van.json"));
    CHECK_THAT(ui.item("Trouble/text").value,
               Catch::Contains("a picture (JPEG), not a Barwright project"));
    CHECK(ui.desk.history.now() == before);
    CHECK(ui.desk.history.can_undo());
    ui.click("Trouble/Close");
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    CHECK(ui.has("Lay out/width"));
}

TEST_CASE("a save that the disk refuses is told, and the project still counts as unsaved",
          "[editor][files]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    CHECK_FALSE(editor::save_to(ui.desk, "/proc/no_such_place/box.json"));
    CHECK_FALSE(ui.desk.history.is_saved());
    CHECK(ui.desk.file.empty());
    ui.settle();
    CHECK(ui.has("Trouble/Close"));
}

TEST_CASE("saving for the first time asks where, then by key without asking", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press('S', key::left_control);
    REQUIRE(std::holds_alternative<editor::FileBrowser>(ui.desk.ui.dialog));
    ui.fill("Files/Folder", folder.path().string());
    ui.fill("Files/Name", "parts box");
    CHECK(ui.desk.file == folder.path() / "parts box.barwright.json");
    CHECK(fs::exists(ui.desk.file));
    ui.fill("Lay out/width", "26");
    CHECK_FALSE(ui.desk.history.is_saved());
    ui.press('S', key::left_control);
    CHECK(ui.desk.history.is_saved());
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("what is half typed is taken before the project is saved", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    ui.settle();
    ui.write("Lay out/width", "31");
    ui.press('S', key::left_control);
    const auto text = engine::read_whole_file(folder.path() / "box.json");
    REQUIRE(text);
    CHECK_THAT(*text, Catch::Contains("\"31\""));
}

TEST_CASE("bars half typed are taken before the project is saved", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    editor::run_command(ui.desk, "place.buy");
    ui.settle();
    ui.write("Buy/bars of " + editor::project_of(ui.desk).stock[0].name, "16 ft; 25 ft");
    ui.press('S', key::left_control);
    CHECK(ui.desk.history.is_saved());
    const auto text = engine::read_whole_file(folder.path() / "box.json");
    REQUIRE(text);
    CHECK_THAT(*text, Catch::Contains("\"25 ft\""));
}

TEST_CASE("export writes every schedule into the folder that was chosen", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Top/Export");
    ui.write("Files/Folder", (folder.path() / "for the shop").string());
    ui.press(key::enter);
    ui.click("Files/Make this folder");
    ui.click("Files/Take");
    for (const auto name : model::schedule_names) {
        INFO(name);
        CHECK(fs::file_size(folder.path() / "for the shop" / name) > 0);
    }
    REQUIRE(ui.desk.ui.notice);
    CHECK_THAT(ui.desk.ui.notice->text, Catch::Contains("for the shop"));
}

TEST_CASE("exporting again says which schedules are written anew", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::export_to(ui.desk, folder.path()));
    const auto browser = editor::browser_for(editor::BrowseFor::exporting, folder.path());
    std::size_t files = 0;
    for (const auto& entry : fs::recursive_directory_iterator(folder.path())) {
        if (!entry.is_regular_file()) continue;
        CAPTURE(entry.path());
        const auto name = fs::relative(entry.path(), folder.path()).string();
        const bool is_filled_in = entry.path().filename() == model::buying_names.back();
        CHECK((std::ranges::count(browser.replaced, name) == 1) == !is_filled_in);
        ++files;
    }
    CHECK(files == browser.replaced.size() + 1);
}

TEST_CASE("a price list that was filled in is not exported anew, strips of nothing go",
          "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::export_to(ui.desk, folder.path()));
    const auto list = folder.path() / "buying" / model::buying_names.back();
    REQUIRE(fs::exists(list));
    std::ofstream(list) << "by hand";
    REQUIRE(fs::exists(folder.path() / "strips.pdf"));
    auto project = editor::project_of(ui.desk);
    project.frames[0].panels.clear();
    auto& members = project.frames[0].members;
    members.erase(members.begin() + 1, members.end());
    ui.desk.history.record("one member", std::move(project));
    ui.settle();
    REQUIRE(ui.now().drills.empty());
    REQUIRE(editor::export_to(ui.desk, folder.path()));
    CHECK_FALSE(fs::exists(folder.path() / "strips.pdf"));
    CHECK(fs::exists(folder.path() / "book.pdf"));
    CHECK(fs::file_size(list) == 7);
}

TEST_CASE("export is not offered while there is no frame", "[editor][files]") {
    HeadlessUi ui;
    CHECK_FALSE(ui.item("Top/Export").enabled);
}

TEST_CASE("a drag of any length keeps figures for no more states than undo can come to",
          "[editor][files]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::derived(ui.desk);
    for (int i = 0; i < 3 * static_cast<int>(editor::History::most_steps); ++i) {
        const auto edit = model::SetFormula{"width", std::to_string(700 + i) + " mm"};
        REQUIRE(editor::submit(ui.desk, editor::change_of(edit, "drag 1")));
        editor::derived(ui.desk);
    }
    CHECK(ui.desk.figures.size() <= 2 * editor::History::most_steps);
    CHECK(editor::figures_before(ui.desk));
}

TEST_CASE("the schedules have the names under which they are known", "[editor][files]") {
    HeadlessUi ui;
    const auto files =
        model::schedule_files(editor::project_of(ui.desk), *ui.desk.catalogue, ui.now().resolved);
    REQUIRE(files.size() == model::schedule_names.size());
    for (std::size_t i = 0; i < files.size(); ++i)
        CHECK(files[i].name == std::string(model::schedule_names[i]));
}

TEST_CASE("files of other kinds are told by what they are", "[editor][files]") {
    const TemporaryFolder folder;
    const fs::path file = folder.path() / "van.json";
    HeadlessUi ui;
    for (const auto& [bytes, words] : {std::pair{"\x89PNG\r\n", "a picture (PNG)"},
                                       {"%PDF-1.7", "a PDF document"},
                                       {"PK\x03\x04", "a ZIP archive"}}) {
        std::ofstream(file, std::ios::binary) << bytes;
        CHECK_FALSE(editor::open_file(ui.desk, file));
        CHECK_THAT(std::get<editor::Trouble>(ui.desk.ui.dialog).text, Catch::Contains(words));
    }
}

TEST_CASE("a fault inside a project's JSON keeps its line", "[editor][files]") {
    const TemporaryFolder folder;
    const fs::path file = folder.path() / "van.json";
    std::ofstream(file) << "{\n  \"barwright\": 1,\n  oops\n}";
    HeadlessUi ui;
    CHECK_FALSE(editor::open_file(ui.desk, file));
    CHECK_THAT(std::get<editor::Trouble>(ui.desk.ui.dialog).text, Catch::Contains("line 3"));
}

TEST_CASE("a project that has no name is saved under that of its first frame", "[editor][files]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::browse_to_save(ui.desk);
    CHECK(std::get<editor::FileBrowser>(ui.desk.ui.dialog).file_name == "box.barwright.json");
}

TEST_CASE("undo takes the word of a save away", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    ui.settle();
    REQUIRE(ui.desk.ui.notice);
    ui.press('Z', key::left_control);
    CHECK_FALSE(ui.desk.ui.notice);
}

TEST_CASE("schedules that are not fit to cut from are written only when asked twice",
          "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    auto stock = editor::project_of(ui.desk).stock[0];
    stock.bars = {{.length = "4 in"}};
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutStock{stock, stock.name})));
    REQUIRE(ui.now().summary.errors > 0);
    ui.settle();
    ui.click("Top/Export");
    REQUIRE(std::holds_alternative<editor::ExportQuestion>(ui.desk.ui.dialog));
    CHECK_THAT(ui.item("Export/what").value, Catch::Contains("bar"));
    ui.click("Export/Look");
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    const auto& worst = ui.now().finding_groups.front().concerns;
    CHECK(ui.desk.ui.selection ==
          editor::selection_of_subjects(*ui.now().project, ui.now().resolved, worst));
    CHECK_FALSE(ui.desk.ui.selection == editor::Selection{});
    ui.click("Top/Export");
    ui.click("Export/Write");
    CHECK(std::holds_alternative<editor::FileBrowser>(ui.desk.ui.dialog));
    REQUIRE(editor::export_to(ui.desk, folder.path()));
    CHECK_THAT(ui.desk.ui.notice->text, Catch::Contains("not fit to cut from"));
}
