#include "editor/write_run.h"

#include "editor/band_worker.h"
#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "engine/files/whole_file.h"

#include "tests/editor/headless_ui.h"

#include <catch2/catch.hpp>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <thread>

using tests::HeadlessUi;
using tests::TemporaryFolder;
namespace fs = std::filesystem;

namespace {

bool is_writing(const HeadlessUi& ui) {
    return std::holds_alternative<editor::Writing>(ui.desk.ui.dialog);
}

void wait_for_the_end(HeadlessUi& ui) {
    for (int i = 0; i < 3000 && is_writing(ui); ++i) {
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
        ui.settle();
    }
    REQUIRE_FALSE(is_writing(ui));
}

}  // namespace

TEST_CASE("the window goes on while an export is worked out, and tells when it is written",
          "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.bands = std::make_unique<editor::BandWorker>();
    REQUIRE(editor::export_to(ui.desk, folder.path() / "out"));
    REQUIRE(is_writing(ui));
    wait_for_the_end(ui);
    REQUIRE(ui.desk.ui.notice);
    CHECK_THAT(ui.desk.ui.notice->text, Catch::Contains("drill strips"));
    CHECK(fs::exists(folder.path() / "out" / "drill.csv"));
    CHECK(fs::exists(folder.path() / "out" / "strips.pdf"));
}

TEST_CASE("what is cancelled while it is worked out writes nothing", "[editor][files]") {
    const TemporaryFolder folder;
    HeadlessUi ui;
    tests::start_box(ui.desk);
    ui.desk.bands = std::make_unique<editor::BandWorker>();
    const auto file = folder.path() / "old";
    std::ofstream(file) << "old";
    editor::ToWrite made;
    made.files.push_back({.path = file, .bytes = "new"});
    bool is_taken = false;
    editor::begin_writing(
        ui.desk, "Writing for ever",
        [made](const auto& go_on) -> engine::Result<editor::ToWrite> {
            while (go_on(0.25)) std::this_thread::sleep_for(std::chrono::milliseconds(1));
            return made;  // it did not notice in time
        },
        [&](editor::Desk&, const auto& result) {
            is_taken = true;
            static_cast<void>(editor::write_all(*result));
        });
    ui.settle();
    REQUIRE(is_writing(ui));
    CHECK(ui.has("Writing/Cancel"));
    ui.press(editor::key::escape);
    wait_for_the_end(ui);
    CHECK_FALSE(is_taken);
    REQUIRE(ui.desk.ui.notice);
    CHECK_THAT(ui.desk.ui.notice->text, Catch::Contains("nothing was written"));
    CHECK(fs::file_size(file) == 3);
    CHECK(engine::read_whole_file(file).value() == "old");
}

TEST_CASE("paper of a project that was opened by a bare name lies beside it", "[editor][files]") {
    const TemporaryFolder folder;
    const auto before = fs::current_path();
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, folder.path() / "box.json"));
    fs::current_path(folder.path());
    REQUIRE(editor::open_file(ui.desk, "box.json"));
    editor::run_command(ui.desk, "make.paper");
    ui.settle();
    ui.click("Make/Write the drill strips");
    ui.settle();
    const auto said = ui.item("Make/said").value;
    fs::current_path(before);
    CHECK_THAT(said, Catch::Contains("Wrote"));
    CHECK(fs::exists(folder.path() / "box.strips.pdf"));
}

TEST_CASE("a file that cannot be written is named, and work that fails is told",
          "[editor][files]") {
    const TemporaryFolder folder;
    std::ofstream(folder.path() / "no folder") << "a file";
    editor::ToWrite made;
    made.files.push_back({.path = folder.path() / "first.csv", .bytes = "x"});
    made.files.push_back({.path = folder.path() / "no folder" / "cut.csv", .bytes = "x"});
    const auto written = editor::write_all(made);
    REQUIRE_FALSE(written);
    CHECK_THAT(engine::to_text(written.error()),
               Catch::Contains("no folder") && Catch::Contains("1 of 2 files"));
    HeadlessUi ui;
    std::string said;
    editor::begin_writing(
        ui.desk, "Writing",
        [](const auto&) -> engine::Result<editor::ToWrite> { throw std::bad_alloc(); },
        [&](editor::Desk&, const auto& result) {
            REQUIRE_FALSE(result);
            said = engine::to_text(result.error());
        });
    CHECK_THAT(said, Catch::Contains("not enough memory"));
}
