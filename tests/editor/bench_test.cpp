#include "model/bench/bench.h"

#include "editor/bench_desk.h"
#include "editor/commands.h"
#include "editor/desk_files.h"
#include "editor/keys.h"
#include "engine/files/whole_file.h"

#include "tests/editor/at_bench.h"
#include "tests/support/scratch_folder.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>

using tests::HeadlessUi;
using tests::open_at_bench;
using tests::text_in_file;
namespace fs = std::filesystem;
namespace key = editor::key;

namespace {

void rename_first_member(HeadlessUi& ui, const char* name) {
    const auto& frame = editor::project_of(ui.desk).frames[0];
    auto member = frame.members[0];
    const auto old = member.name;
    member.name = name;
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::PutMember{frame.name, member, old})));
    ui.settle();
}

const model::BenchPiece& in_hand(const HeadlessUi& ui) {
    const auto& bench = *ui.desk.ui.make.bench;
    REQUIRE(bench.at);
    return bench.pieces.at(*bench.at);
}

}  // namespace

TEST_CASE("pieces are ticked by keys alone, in a file beside the project", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_keys"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    const auto project = text_in_file(scratch.path / "box.json");
    const auto first = in_hand(ui).name;
    CHECK(ui.item("Make/state").value == "to cut");
    ui.press(key::space);
    CHECK(in_hand(ui).name != first);
    const auto ticks = model::read_ticks(scratch.path / "box.bench.json");
    REQUIRE(ticks);
    REQUIRE(ticks->pieces.size() == 1);
    CHECK(ticks->pieces[0].piece == first);
    CHECK(ticks->pieces[0].is_done(model::BenchWork::cut));
    CHECK(text_in_file(scratch.path / "box.json") == project);
    CHECK(ui.desk.history.is_saved());
    // Arrows go to other pieces and other work.
    const auto second = in_hand(ui).name;
    ui.press(key::down);
    CHECK(in_hand(ui).name != second);
    ui.press(key::up);
    CHECK(in_hand(ui).name == second);
    ui.press(key::right);
    CHECK(ui.item("Make/state").value == "to deburr");
    CHECK(in_hand(ui).name == first);  // the one that is cut
    ui.press(key::left);
    CHECK(ui.item("Make/state").value == "to cut");
}

TEST_CASE("a piece that is not cut is not ticked as drilled, and why is said", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_order"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    ui.press(key::right);
    ui.press(key::right);
    REQUIRE(ui.item("Make/state").value == "to drill");
    ui.press(key::space);
    CHECK(ui.item("Make/trouble").value.find("not cut yet") != std::string::npos);
    CHECK(ui.desk.ui.make.bench->ticks.pieces.empty());
    CHECK(ui.item("Make/state").value == "to drill");
}

TEST_CASE("where no other piece is ready, Space says what is to be done first", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_none_ready"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    ui.press(key::space);  // cut
    ui.press(key::right);
    ui.press(key::space);  // deburred
    CHECK(ui.item("Make/said").value.find("No other piece is ready to be deburred: cut ") == 0);
    ui.press(key::left);
    CHECK_FALSE(ui.has("Make/said"));
    const auto all = ui.desk.ui.make.bench->pieces.size();
    for (std::size_t i = 1; i < all; ++i) ui.press(key::space);
    CHECK(ui.item("Make/said").value == "Every piece is cut.");
}

TEST_CASE("the bench says lengths with their unit, and from which bar", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_unit"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    const auto length = ui.item("Make/line 1").value;
    CHECK(length.substr(length.size() - 2) == "in");
    CHECK(ui.item("Make/line 2").value.find(", bar ") != std::string::npos);
}

TEST_CASE("a tick is taken back", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_back"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    const auto first = in_hand(ui).name;
    ui.press(key::space);
    ui.press(key::up);
    CHECK(in_hand(ui).name == first);
    CHECK(ui.item("Make/state").value == "cut");
    ui.press(key::backspace);
    CHECK(ui.item("Make/state").value == "to cut");
    const auto ticks = model::read_ticks(scratch.path / "box.bench.json");
    REQUIRE(ticks);
    CHECK(ticks->pieces.empty());
}

TEST_CASE("what was cut before an edit is told to be too short or too long", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_edit"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    const auto all = ui.desk.ui.make.bench->pieces.size();
    for (std::size_t i = 0; i < all; ++i) ui.press(key::space);
    const auto verdicts = [&](model::BenchVerdict verdict) {
        return std::ranges::count(ui.desk.ui.make.bench->pieces, verdict,
                                  &model::BenchPiece::verdict);
    };
    REQUIRE(verdicts(model::BenchVerdict::still_right) == static_cast<std::ptrdiff_t>(all));
    const auto width = [&](const char* formula) {
        REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetFormula{"width", formula})));
        ui.settle();
    };
    width("40");
    const auto longer = verdicts(model::BenchVerdict::spoiled);
    CHECK(longer > 0);
    width("20");
    CHECK(verdicts(model::BenchVerdict::rework) == longer);
    editor::run_command(ui.desk, "edit.undo");
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    CHECK(verdicts(model::BenchVerdict::still_right) == static_cast<std::ptrdiff_t>(all));
}

TEST_CASE("ticks follow a renamed member, and go along to another file", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_along"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    const auto all = ui.desk.ui.make.bench->pieces.size();
    for (std::size_t i = 0; i < all; ++i) ui.press(key::space);
    rename_first_member(ui, "upright of the door");
    CHECK(ui.desk.ui.make.bench->left_over.empty());
    REQUIRE(editor::save_to(ui.desk, scratch.path / "other.json"));
    ui.settle();
    const auto there = model::read_ticks(scratch.path / "other.bench.json");
    REQUIRE(there);
    CHECK(there->pieces.size() == all);
    CHECK(model::read_ticks(scratch.path / "box.bench.json")->pieces.size() == all);
}

TEST_CASE("ticks go along before anything follows the save, and nothing put aside is written over",
          "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_leave"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    ui.press(key::space);
    const auto ticks = text_in_file(scratch.path / "box.bench.json");
    REQUIRE(engine::write_whole_file(scratch.path / "other.bench.json", "of one that is gone"));
    REQUIRE(engine::write_whole_file(scratch.path / "other.bench.json.old", "of an earlier one"));
    REQUIRE(editor::save_to(ui.desk, scratch.path / "other.json"));
    // Without another frame: the window is closed.
    CHECK(text_in_file(scratch.path / "other.bench.json") == ticks);
    CHECK(text_in_file(scratch.path / "other.bench.json.old") == "of an earlier one");
    CHECK(text_in_file(scratch.path / "other.bench.json.old2") == "of one that is gone");
}

TEST_CASE("ticks that cannot go along are kept, told, and tried again", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_later"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    ui.press(key::space);
    const auto ticks = text_in_file(scratch.path / "box.bench.json");
    // No file of a name so long can be put aside: the system takes no longer one.
    const std::string name(244, 'x');
    REQUIRE(engine::write_whole_file(scratch.path / (name + ".bench.json"), "of another"));
    REQUIRE_FALSE(editor::save_to(ui.desk, scratch.path / (name + ".json")));
    CHECK(std::holds_alternative<editor::Trouble>(ui.desk.ui.dialog));
    CHECK(text_in_file(scratch.path / (name + ".bench.json")) == "of another");
    SECTION("what was in the way is gone") {
        std::filesystem::remove(scratch.path / (name + ".bench.json"));
        ui.settle();
        CHECK(text_in_file(scratch.path / (name + ".bench.json")) == ticks);
    }
    SECTION("the project is saved as what it was") {
        ui.desk.ui.dialog = {};
        REQUIRE(editor::save_to(ui.desk, scratch.path / "box.json"));
        ui.press(key::space);
        CHECK(text_in_file(scratch.path / "box.bench.json") != ticks);
        CHECK_FALSE(fs::exists(scratch.path / "box.bench.json.old"));
    }
}

TEST_CASE("a project that is saved over itself by another spelling keeps its ticks",
          "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_spelled"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    ui.press(key::space);
    const auto ticks = text_in_file(scratch.path / "box.bench.json");
    fs::create_directory(scratch.path / "beside");
    REQUIRE(editor::save_to(ui.desk, scratch.path / "beside" / ".." / "box.json"));
    CHECK(text_in_file(scratch.path / "box.bench.json") == ticks);
    CHECK_FALSE(fs::exists(scratch.path / "box.bench.json.old"));
}

TEST_CASE("a name that never came into the project's file does not part its piece from its ticks",
          "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_unsaved"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    rename_first_member(ui, "upright of the door");
    const auto all = ui.desk.ui.make.bench->pieces.size();
    for (std::size_t i = 0; i < all; ++i) ui.press(key::space);
    SECTION("closed without saving") {
        REQUIRE(editor::open_file(ui.desk, scratch.path / "box.json"));
    }
    SECTION("saved, and opened again") {
        REQUIRE(editor::save_to(ui.desk, scratch.path / "box.json"));
        ui.settle();
        REQUIRE(editor::open_file(ui.desk, scratch.path / "box.json"));
    }
    SECTION("brought back after a crash") {
        const auto project = editor::project_of(ui.desk);
        REQUIRE(editor::open_file(ui.desk, scratch.path / "box.json"));
        ui.desk.history.record("edits brought back", project);
    }
    editor::run_command(ui.desk, "make.bench");
    ui.settle();
    const auto& bench = *ui.desk.ui.make.bench;
    CHECK(bench.left_over.empty());
    CHECK(editor::count_of(bench, model::BenchWork::cut).done == all);
}

TEST_CASE("ticks that cannot be read are left as they are, and it is said", "[editor][bench]") {
    const tests::ScratchFolder scratch{"bench_bad"};
    HeadlessUi ui;
    tests::start_box(ui.desk);
    REQUIRE(editor::save_to(ui.desk, scratch.path / "box.json"));
    REQUIRE(engine::write_whole_file(scratch.path / "box.bench.json", "a photograph"));
    REQUIRE(editor::open_file(ui.desk, scratch.path / "box.json"));
    editor::run_command(ui.desk, "make.bench");
    ui.settle();
    CHECK(ui.item("Make/trouble").value.find("cannot be read") != std::string::npos);
    ui.press(key::space);
    CHECK(text_in_file(scratch.path / "box.bench.json") == "a photograph");
    // Nobody knows what it holds: it goes along as it is.
    REQUIRE(editor::save_to(ui.desk, scratch.path / "other.json"));
    ui.settle();
    CHECK(text_in_file(scratch.path / "other.bench.json") == "a photograph");
    CHECK(text_in_file(scratch.path / "box.bench.json") == "a photograph");
    CHECK(ui.item("Make/trouble").value.find("other.bench.json") != std::string::npos);
}

TEST_CASE("without a file of its own a project keeps no ticks, and says why", "[editor][bench]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "make.bench");
    ui.settle();
    ui.press(key::space);
    CHECK(ui.item("Make/trouble").value.find("Save the project first") != std::string::npos);
}

TEST_CASE("the steps of the assembly are gone through by keys", "[editor][bench]") {
    HeadlessUi ui;
    tests::start_box(ui.desk);
    editor::run_command(ui.desk, "make.assembly");
    ui.settle();
    const auto first = ui.item("Make/step").value;
    CHECK(first.rfind("Step 1", 0) == 0);
    ui.press(key::down);
    CHECK(ui.item("Make/step").value.rfind("Step 2", 0) == 0);
    CHECK_FALSE(ui.desk.ui.selection.pieces.empty());
    CHECK(ui.has("Make/work 1"));
    ui.press(key::up);
    CHECK(ui.item("Make/step").value == first);
}
