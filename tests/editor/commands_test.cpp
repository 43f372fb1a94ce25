#include "editor/commands.h"

#include "editor/dialogs/command_finder.h"
#include "editor/keys.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <set>

using tests::HeadlessUi;
namespace key = editor::key;

TEST_CASE("every command has its own id, label and shortcut", "[editor][commands]") {
    std::set<std::string_view> ids;
    std::set<std::string_view> labels;
    std::set<std::string> shortcuts;
    for (const auto& command : editor::commands()) {
        INFO(command.id);
        CHECK(ids.insert(command.id).second);
        CHECK(labels.insert(command.label).second);
        const auto keys = editor::shortcut_text(command.keys);
        CHECK((keys.empty() || shortcuts.insert(keys).second));
        const auto also = editor::shortcut_text(command.also);
        CHECK((also.empty() || shortcuts.insert(also).second));
        CHECK(command.enabled != nullptr);
        CHECK(command.run != nullptr);
    }
    CHECK(ids.size() > 15);
}

TEST_CASE("every command can be asked for on an empty desk without harm", "[editor][commands]") {
    for (const auto& command : editor::commands()) {
        HeadlessUi ui;
        INFO(command.id);
        editor::run_command(ui.desk, command.id);
        ui.settle();
        ui.press(key::escape);
        CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    }
}

TEST_CASE("every command of a menu can be clicked there", "[editor][commands]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.click("Top/Frame");
    ui.click("Top/Frame/frame.box");
    CHECK(std::holds_alternative<editor::StarterForm>(ui.desk.ui.dialog));
}

TEST_CASE("a plain key typed into a field is text, not a command", "[editor][commands]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto before = ui.desk.ui.view.camera;
    ui.click("Lay out/width");
    ui.press('1');
    CHECK(ui.desk.ui.view.camera == before);
    ui.press(key::escape);
    ui.press('1');
    CHECK(ui.desk.ui.view.camera != before);
}

TEST_CASE("undo and redo go by key", "[editor][commands]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
    ui.press('Z', key::left_control);
    CHECK(editor::project_of(ui.desk).frames.empty());
    ui.press('Y', key::left_control);
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
    ui.press('Z', key::left_control);
    ui.press('Z', key::left_control, key::left_shift);
    CHECK(editor::project_of(ui.desk).frames.size() == 1);
}

TEST_CASE("a command is found by words and run by the keyboard alone", "[editor][commands]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    ui.press(key::f1);
    ui.settle();
    REQUIRE(ui.has("Find/words"));
    ui.type("place FRAME");
    ui.settle();
    CHECK(ui.has("Find/find frame.place"));
    CHECK_FALSE(ui.has("Find/find project.new"));
    ui.press(key::enter);
    ui.settle();
    CHECK(std::holds_alternative<editor::PlaceForm>(ui.desk.ui.dialog));
}

TEST_CASE("the arrows choose among the commands that are found, and a click runs one",
          "[editor][commands]") {
    HeadlessUi ui;
    ui.press(key::f1);
    ui.type("new");
    ui.settle();
    const auto found = editor::found_commands("new");
    REQUIRE(found.size() > 1);
    CHECK(ui.item("Find/find " + std::string(found[0])).value == "chosen");
    ui.press(key::down);
    ui.settle();
    CHECK(ui.item("Find/find " + std::string(found[1])).value == "chosen");
    ui.press(key::up);
    ui.press(key::up);
    ui.settle();
    CHECK(ui.item("Find/find " + std::string(found.back())).value == "chosen");
    ui.click("Find/find frame.box");
    ui.settle();
    CHECK(std::holds_alternative<editor::StarterForm>(ui.desk.ui.dialog));
}

TEST_CASE("what cannot be done now is found but not run", "[editor][commands]") {
    HeadlessUi ui;
    ui.press(key::f1);
    ui.type("undo");
    ui.settle();
    ui.press(key::enter);
    ui.settle();
    CHECK(ui.has("Find/words"));
    ui.type("x");
    ui.settle();
    CHECK(ui.item("Find/words").value.find('x') != std::string::npos);
    ui.press(key::escape);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    CHECK(editor::found_commands("no such thing").empty());
    CHECK(editor::found_commands("").size() == editor::commands().size());
}

TEST_CASE("the chosen member is removed by the delete key and comes back by undo",
          "[editor][commands]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.settle();
    const auto members = editor::project_of(ui.desk).frames[0].members.size();
    ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                std::vector<model::Index>{0});
    ui.press(key::remove);
    CHECK(editor::project_of(ui.desk).frames[0].members.size() == members - 1);
    ui.press('Z', key::left_control);
    CHECK(editor::project_of(ui.desk).frames[0].members.size() == members);
}

TEST_CASE("the project is named by its form", "[editor][commands]") {
    HeadlessUi ui;
    editor::run_command(ui.desk, "project.name");
    ui.settle();
    ui.fill("Title/name", "Repair van");
    CHECK(editor::title_of(ui.desk) == "Repair van");
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
}

TEST_CASE("the frame of the chosen piece is removed whole", "[editor][commands]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                std::vector<model::Index>{0});
    editor::run_command(ui.desk, "frame.remove");
    CHECK(editor::project_of(ui.desk).frames.empty());
    CHECK(ui.desk.ui.selection.pieces.empty());
}

TEST_CASE("delete in an open menu or list removes nothing", "[editor][commands]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                std::vector<model::Index>{0});
    ui.settle();
    const auto members = editor::project_of(ui.desk).frames[0].members.size();
    ui.click("Top/Edit");
    REQUIRE(ui.has("Top/Edit/edit.undo"));
    ui.press(key::remove);
    CHECK(editor::project_of(ui.desk).frames[0].members.size() == members);
    ui.press(key::escape);
    CHECK_FALSE(ui.has("Top/Edit/edit.undo"));
    CHECK_FALSE(ui.desk.ui.selection.pieces.empty());
    ui.press(key::escape);
    CHECK(ui.desk.ui.selection.pieces.empty());
}

TEST_CASE("escape that closes a dialog keeps what is chosen", "[editor][commands]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.ui.selection = editor::selection_of(editor::project_of(ui.desk), ui.now().resolved,
                                                std::vector<model::Index>{0});
    ui.click("Lay out/New dimension");
    ui.press(key::escape);
    CHECK_FALSE(editor::is_open(ui.desk.ui.dialog));
    CHECK_FALSE(ui.desk.ui.selection.pieces.empty());
}

TEST_CASE(
    "text grows by control and +, with shift where the keyboard asks for it, and by the "
    "number pad",
    "[editor][commands]") {
    HeadlessUi ui;
    ui.press(key::equal, key::left_control, key::left_shift);
    CHECK(ui.desk.ui.text_scale == Approx(1.1F));
    ui.press(key::equal, key::left_control);
    CHECK(ui.desk.ui.text_scale == Approx(1.21F));
    CHECK(key::without_keypad(key::keypad_add) == key::equal);
    CHECK(key::without_keypad(key::keypad_subtract) == key::minus);
    CHECK(key::without_keypad('K') == 'K');
}

TEST_CASE("text grows and shrinks within bounds", "[editor][commands]") {
    HeadlessUi ui;
    for (int i = 0; i < 40; ++i) editor::run_command(ui.desk, "view.larger");
    CHECK(ui.desk.ui.text_scale == Approx(2.5F));
    for (int i = 0; i < 80; ++i) editor::run_command(ui.desk, "view.smaller");
    CHECK(ui.desk.ui.text_scale == Approx(0.6F));
}
