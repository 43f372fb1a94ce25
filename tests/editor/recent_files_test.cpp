#include "editor/recent_files.h"

#include "editor/desk_files.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <fstream>

using tests::HeadlessUi;
using tests::TemporaryFolder;
namespace fs = std::filesystem;

namespace {

fs::path made(const fs::path& file) {
    std::ofstream(file) << "{}";
    return file;
}

}  // namespace

TEST_CASE("files that were open are there again in the next run, the last first",
          "[editor][recent]") {
    const TemporaryFolder folder;
    const auto state = folder.path() / "state";
    std::vector<fs::path> recent;
    const auto one = made(folder.path() / "one.json");
    const auto two = made(folder.path() / "two.json");
    editor::add_recent(recent, one, state);
    editor::add_recent(recent, two, state);
    editor::add_recent(recent, one, state);
    CHECK(recent == std::vector{one, two});
    CHECK(editor::recent_files(state) == recent);
    fs::remove(two);
    CHECK(editor::recent_files(state) == std::vector{one});
}

TEST_CASE("the list of files stays short", "[editor][recent]") {
    const TemporaryFolder folder;
    std::vector<fs::path> recent;
    for (int i = 0; i < 20; ++i) {
        const auto file = made(folder.path() / (std::to_string(i) + ".json"));
        editor::add_recent(recent, file, folder.path() / "state");
    }
    CHECK(recent.size() == editor::most_recent_files);
    CHECK(recent.front().filename() == "19.json");
}

TEST_CASE("a list that cannot be read or written is an empty one", "[editor][recent]") {
    const TemporaryFolder folder;
    const auto state = folder.path() / "state";
    CHECK(editor::recent_files(state).empty());
    CHECK(editor::recent_files({}).empty());
    fs::create_directories(state);
    for (const char* text : {"", "{}", "[1, 2]", "[\"/nowhere/at/all.json\"]", "\x89PNG"}) {
        std::ofstream(state / "recent.json") << text;
        CHECK(editor::recent_files(state).empty());
    }
    std::vector<fs::path> recent;
    const auto file = made(folder.path() / "one.json");
    editor::add_recent(recent, file, file / "no folder");
    CHECK(recent == std::vector{file});
}

TEST_CASE("the first card opens what was open before", "[editor][recent]") {
    const TemporaryFolder folder;
    const auto file = folder.path() / "parts box.json";
    {
        HeadlessUi ui;
        ui.desk.state_folder = folder.path() / "state";
        tests::start_box(ui.desk);
        REQUIRE(editor::save_to(ui.desk, file));
    }
    HeadlessUi ui;
    ui.desk.recent = editor::recent_files(folder.path() / "state");
    ui.settle();
    ui.click("Start/recent parts box");
    CHECK(ui.desk.file == file);
    CHECK_FALSE(editor::project_of(ui.desk).frames.empty());
}
