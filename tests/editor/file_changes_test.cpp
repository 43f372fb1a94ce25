#include "editor/file_changes.h"

#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/open_project.h"
#include "engine/files/whole_file.h"
#include "model/project/project_json.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

using Catch::Contains;
using tests::HeadlessUi;
using tests::TemporaryFolder;
namespace fs = std::filesystem;

namespace {

void set_note(HeadlessUi& ui, const std::string& note) {
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetTitle{"counter", note})));
    ui.settle();
}

std::string note_in(const fs::path& file) { return editor::open_project(file)->note; }

// Something else writes the file.
void write_from_outside(const fs::path& file, const std::string& note) {
    auto project = editor::open_project(file).value();
    project.note = note + std::string(10, '.');
    REQUIRE(engine::write_whole_file(file, model::to_json_text(project)));
    fs::last_write_time(file, fs::last_write_time(file) + std::chrono::seconds(2));
}

// Saved as "here", then written by something else.
fs::path changed_file(HeadlessUi& ui, const TemporaryFolder& folder) {
    const auto file = folder.path() / "counter.json";
    set_note(ui, "here");
    REQUIRE(editor::save_to(ui.desk, file));
    write_from_outside(file, "outside");
    return file;
}

// Edits what is here, and saves it over that file: the question is on the screen.
fs::path asked_on_saving(HeadlessUi& ui, const TemporaryFolder& folder) {
    const auto file = changed_file(ui, folder);
    set_note(ui, "here again");
    editor::run_command(ui.desk, "project.save");
    ui.settle();
    return file;
}

}  // namespace

TEST_CASE("saving over what something else wrote asks first", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    const auto file = asked_on_saving(ui, folder);
    CHECK_THAT(ui.item("Changed/words").value, Contains(file.string()));
    ui.click("Changed/Stay");
    CHECK_THAT(note_in(file), Contains("outside"));
    CHECK_FALSE(ui.desk.history.is_saved());
    editor::run_command(ui.desk, "project.save");
    ui.settle();
    ui.click("Changed/Save over");
    CHECK(note_in(file) == "here again");
    CHECK(ui.desk.history.is_saved());
}

TEST_CASE("what is here may be saved apart from what something else wrote", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    const auto file = asked_on_saving(ui, folder);
    ui.click("Changed/Save apart");
    ui.settle();
    REQUIRE(std::holds_alternative<editor::FileBrowser>(ui.desk.ui.dialog));
    ui.write("Files/Name", "apart.json");
    ui.click("Files/Take");
    CHECK(note_in(folder.path() / "apart.json") == "here again");
    CHECK_THAT(note_in(file), Contains("outside"));
}

TEST_CASE("coming back to a file that has changed offers to read it again", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    changed_file(ui, folder);
    editor::look_at_file(ui.desk);
    ui.settle();
    CHECK_THAT(ui.item("Changed/words").value, !Contains("loses"));
    ui.click("Changed/Read again");
    CHECK_THAT(editor::project_of(ui.desk).note, Contains("outside"));
    CHECK(ui.desk.history.is_saved());
    editor::look_at_file(ui.desk);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("keeping what is here makes it unsaved, and it is not asked twice", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    changed_file(ui, folder);
    editor::look_at_file(ui.desk);
    ui.settle();
    ui.click("Changed/Stay");
    CHECK(editor::project_of(ui.desk).note == "here");
    CHECK_FALSE(ui.desk.history.is_saved());
    editor::look_at_file(ui.desk);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    editor::run_command(ui.desk, "project.leave");
    ui.settle();
    CHECK(std::holds_alternative<editor::UnsavedQuestion>(ui.desk.ui.dialog));
}

TEST_CASE("edits that are in no file are named where reading again would drop them",
          "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    changed_file(ui, folder);
    set_note(ui, "here again");
    editor::look_at_file(ui.desk);
    ui.settle();
    CHECK_THAT(ui.item("Changed/words").value, Contains("loses"));
    ui.press(editor::key::enter);  // too easy a way to lose them
    CHECK(editor::project_of(ui.desk).note == "here again");
}

TEST_CASE("a form that is open is named before a file is read again", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    changed_file(ui, folder);
    editor::run_command(ui.desk, "room.box");
    ui.settle();
    editor::look_at_file(ui.desk);
    ui.settle();
    CHECK_THAT(ui.item("Changed/words").value, Contains("form is open"));
    ui.click("Changed/Stay");
    ui.settle();
    CHECK(std::holds_alternative<editor::ObstacleForm>(ui.desk.ui.dialog));
}

TEST_CASE("saving over what cannot be read as a project asks first", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    const auto file = changed_file(ui, folder);
    REQUIRE(engine::write_whole_file(file, "<<<<<<< mine"));
    editor::look_at_file(ui.desk);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    set_note(ui, "here again");
    editor::run_command(ui.desk, "project.save");
    ui.settle();
    CHECK_THAT(ui.item("Changed/words").value, Contains("cannot be read"));
    ui.click("Changed/Stay");
    CHECK(engine::read_whole_file(file).value() == "<<<<<<< mine");
}

TEST_CASE("a file that was only touched, or is gone, is no question", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    const auto file = folder.path() / "counter.json";
    set_note(ui, "here");
    REQUIRE(editor::save_to(ui.desk, file));
    fs::last_write_time(file, fs::last_write_time(file) + std::chrono::hours(1));
    editor::look_at_file(ui.desk);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    fs::remove(file);
    editor::look_at_file(ui.desk);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    set_note(ui, "here again");
    editor::run_command(ui.desk, "project.save");
    CHECK(note_in(file) == "here again");
}
