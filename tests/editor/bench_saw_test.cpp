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

namespace {

std::size_t cut_count(const HeadlessUi& ui) {
    return editor::count_of(*ui.desk.ui.make.bench, model::BenchWork::cut).done;
}

std::ptrdiff_t unused_cuts(HeadlessUi& ui) {
    return std::ranges::count(ui.now().findings, "cut_piece_unused", &model::Finding::code);
}

void show(HeadlessUi& ui, const char* place) {
    editor::run_command(ui.desk, place);
    ui.settle();
}

void take_in_hand(HeadlessUi& ui, model::BenchVerdict verdict) {
    auto& bench = *ui.desk.ui.make.bench;
    const auto found = std::ranges::find(bench.pieces, verdict, &model::BenchPiece::verdict);
    REQUIRE(found != bench.pieces.end());
    bench.at = static_cast<std::size_t>(found - bench.pieces.begin());
    ui.settle();
}

void set_height(HeadlessUi& ui, const char* formula) {
    REQUIRE(editor::submit(ui.desk, editor::change_of(model::SetFormula{"height", formula})));
    ui.settle();
    editor::nest_now(ui.desk);
}

// A post of 40 in is cut, ticked at saw and bench, and wanted 1 in shorter since.
void cut_post_too_long(HeadlessUi& ui, const std::filesystem::path& folder) {
    open_at_bench(ui, folder);
    set_height(ui, "40");
    show(ui, "make.bench");
    auto& bench = *ui.desk.ui.make.bench;
    const auto& pieces = editor::derived(ui.desk).resolved.pieces;
    const auto post = std::ranges::find_if(bench.pieces, [&](const model::BenchPiece& it) {
        return pieces[it.piece].length == 40 * engine::Length::nm_per_inch;
    });
    REQUIRE(post != bench.pieces.end());
    bench.at = static_cast<std::size_t>(post - bench.pieces.begin());
    ui.press(key::space);
    show(ui, "make.saw");
    ui.click("Make/saw/tick what the bench has cut");
    set_height(ui, "39");
    show(ui, "make.bench");
    take_in_hand(ui, model::BenchVerdict::rework);
}

}  // namespace

TEST_CASE("what is reworked at the bench is told to the saw, in one step", "[editor][bench][saw]") {
    const tests::ScratchFolder scratch{"rework_told"};
    HeadlessUi ui;
    cut_post_too_long(ui, scratch.path);
    REQUIRE(unused_cuts(ui) == 1);
    const auto told =
        std::ranges::find(ui.now().findings, "cut_piece_unused", &model::Finding::code);
    CHECK(told->what.find("the bench can rework it into ") != std::string::npos);
    CHECK(told->mend.find("\"It is reworked\"") != std::string::npos);
    show(ui, "make.saw");
    CHECK(ui.item("Make/saw/to rework at the bench").value.find("\"It is reworked\"") !=
          std::string::npos);
    show(ui, "make.bench");
    const auto before = ui.desk.history.now();
    ui.click("Make/It is reworked");
    CHECK(unused_cuts(ui) == 0);
    REQUIRE(ui.desk.ui.notice);
    CHECK(ui.desk.ui.notice->text.find(" is one of 39 in now") != std::string::npos);
    CHECK(cut_count(ui) == 1);
    show(ui, "make.saw");
    CHECK_FALSE(ui.has("Make/saw/tick what the bench has cut"));
    CHECK_FALSE(ui.has("Make/saw/to rework at the bench"));
    // Undone, the saw has it as it was and the bench does not: that is said, and no cut is offered
    // that nobody has made.
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    CHECK(editor::project_of(ui.desk) == *before);
    CHECK_FALSE(ui.has("Make/saw/tick what the bench has cut"));
    REQUIRE(ui.has("Make/saw/reworked at the bench"));
    const auto finding =
        std::ranges::find(ui.now().findings, "cut_piece_unused", &model::Finding::code);
    REQUIRE(finding != ui.now().findings.end());
    CHECK(finding->mend.find("Tell the saw") != std::string::npos);
    show(ui, "make.bench");
    CHECK(ui.item("Make/at the saw").value.find("At the saw it stands as it was before") == 0);
    ui.click("Make/Tell the saw");
    CHECK(unused_cuts(ui) == 0);
    CHECK_FALSE(ui.has("Make/Tell the saw"));
}

TEST_CASE("a spoiled piece that is put away is spoiled at the saw, and cut anew",
          "[editor][bench][saw]") {
    const tests::ScratchFolder scratch{"put_away"};
    HeadlessUi ui;
    cut_post_too_long(ui, scratch.path);
    ui.click("Make/It is reworked");
    // The size is as it was before, by undo of both steps.
    editor::run_command(ui.desk, "edit.undo");
    editor::run_command(ui.desk, "edit.undo");
    ui.settle();
    take_in_hand(ui, model::BenchVerdict::spoiled);
    const auto planned = [&] {
        std::ptrdiff_t count = 0;
        for (const auto& bar : ui.now().saw)
            count += std::ranges::count(bar.cuts, model::CutState::planned, &model::SawCut::state);
        return count;
    };
    const auto before = planned();
    ui.click("Make/Put it away and make it anew");
    CHECK(cut_count(ui) == 0);
    CHECK(planned() == before + 1);
    REQUIRE(ui.desk.ui.notice);
    CHECK(ui.desk.ui.notice->text.find("counts as spoiled") != std::string::npos);
    CHECK(ui.desk.ui.make.bench->ticks.pieces.empty());
}

TEST_CASE("the first tick at the bench counts beside those of the saw", "[editor][bench][saw]") {
    const tests::ScratchFolder scratch{"bench_beside_saw"};
    HeadlessUi ui;
    open_at_bench(ui, scratch.path);
    editor::nest_now(ui.desk);
    editor::run_command(ui.desk, "saw.tick");
    show(ui, "make.bench");
    REQUIRE(cut_count(ui) == 1);
    for (std::size_t cut = 2; cut < 5; ++cut) {
        ui.press(key::space);
        CHECK(cut_count(ui) == cut);
    }
}

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
