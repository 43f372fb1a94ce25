// The ticks of the bench and those of the saw, each shown by the other.
#include "editor/bench_saw.h"

#include "editor/bench_desk.h"
#include "editor/keys.h"
#include "editor/nest_run.h"

#include "tests/editor/at_bench.h"
#include "tests/support/scratch_folder.h"

#include <algorithm>

using tests::HeadlessUi;
using tests::open_at_bench;
using tests::text_in_file;
namespace key = editor::key;

TEST_CASE("what is ticked as cut at the saw is cut at the bench, and is taken back there",
          "[editor][bench][saw]") {
    const tests::ScratchFolder scratch{"bench_of_saw"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    editor::nest_now(ui.desk);
    editor::run_command(ui.desk, "saw.tick");
    editor::run_command(ui.desk, "make.bench");
    ui.settle();
    auto& bench = *ui.desk.ui.make.bench;
    CHECK(editor::count_of(bench, model::BenchWork::cut).done == 1);
    const auto cut = std::ranges::find_if(bench.pieces, &model::BenchPiece::is_cut_at_saw);
    REQUIRE(cut != bench.pieces.end());
    bench.at = static_cast<std::size_t>(cut - bench.pieces.begin());
    ui.settle();
    CHECK(ui.item("Make/state").value == "cut");
    CHECK(ui.item("Make/at the saw").value.find("Ticked at the saw, bar ") == 0);
    ui.press(key::backspace);
    CHECK(ui.item("Make/trouble").value.find("take it back there") != std::string::npos);
    CHECK(editor::count_of(bench, model::BenchWork::cut).done == 1);
    // Nothing of it stands in the ticks: one truth, which undo takes back.
    CHECK(bench.ticks.pieces.empty());
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    CHECK(editor::count_of(bench, model::BenchWork::cut).done == 0);
}

TEST_CASE("what is ticked as cut at the bench is told at the saw, and ticked there by one click",
          "[editor][bench][saw]") {
    const tests::ScratchFolder scratch{"saw_of_bench"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    editor::nest_now(ui.desk);
    const auto cuts_made = [&] {
        std::ptrdiff_t count = 0;
        for (const auto& bar : ui.now().saw)
            count += std::ranges::count(bar.cuts, model::CutState::cut, &model::SawCut::state);
        return count;
    };
    editor::run_command(ui.desk, "make.saw");
    ui.settle();
    CHECK_FALSE(ui.has("Make/saw/tick what the bench has cut"));
    editor::run_command(ui.desk, "make.bench");
    ui.settle();
    ui.press(key::space);
    ui.press(key::space);
    const auto ticks = text_in_file(scratch.path / "box.bench.json");
    // The last one that was ticked says what the saw still has.
    auto& bench = *ui.desk.ui.make.bench;
    const auto last = bench.ticks.pieces.back().piece;
    bench.at = static_cast<std::size_t>(
        std::ranges::find(bench.pieces, last, &model::BenchPiece::name) - bench.pieces.begin());
    ui.settle();
    CHECK(ui.item("Make/at the saw").value.find("still has it to cut, bar ") != std::string::npos);
    editor::run_command(ui.desk, "make.saw");
    ui.settle();
    CHECK(cuts_made() == 0);
    ui.click("Make/saw/tick what the bench has cut");
    CHECK(cuts_made() == 2);
    CHECK_FALSE(ui.has("Make/saw/tick what the bench has cut"));
    CHECK(text_in_file(scratch.path / "box.bench.json") == ticks);
    editor::run_command(ui.desk, "make.bench");
    ui.settle();
    CHECK(editor::count_of(bench, model::BenchWork::cut).done == 2);
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    CHECK(cuts_made() == 0);
    CHECK(editor::count_of(bench, model::BenchWork::cut).done == 2);
}
