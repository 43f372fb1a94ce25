// Ticks of the saw and of the bench, of pieces that the saw cannot tell apart.
#include "model/bench/saw_cuts.h"

#include "tests/model/bench/bought_job.h"

using model::BenchWork;
using model::Index;
using model::WorkState;
using namespace tests;

namespace {

std::vector<Index> cut_pieces(const SmallJob& job, const model::BenchTicks& ticks) {
    std::vector<Index> pieces;
    for (const auto& row : model::bench_pieces(job.project, job.catalogue, job.resolved, ticks)) {
        if (row.state(BenchWork::cut) == WorkState::done) pieces.push_back(row.piece);
    }
    std::ranges::sort(pieces);
    return pieces;
}

}  // namespace

TEST_CASE("what is ticked at the saw is cut at the bench", "[model][bench][saw]") {
    auto job = bought_job();
    CHECK(cut_pieces(job, {}).empty());
    cut(job, 3);
    CHECK(cut_pieces(job, {}) == std::vector<Index>{3});
    const auto row = seen(job, {}, 3);
    CHECK(row.is_cut_at_saw);
    CHECK(row.verdict == model::BenchVerdict::still_right);
    CHECK(model::next_work(row) == BenchWork::deburr);
    cut(job, 0);
    CHECK(cut_pieces(job, {}).size() == 2);
}

TEST_CASE("a piece ticked at the saw and at the bench is one piece", "[model][bench][saw]") {
    auto job = bought_job();
    cut(job, 0);
    // The saw cannot know that the third one is what was cut.
    const auto ticks = tick(job, {}, 2, BenchWork::cut);
    CHECK(cut_pieces(job, ticks) == std::vector<Index>{2});
    CHECK(to_tick(job, ticks).empty());
    const auto two = tick(job, ticks, 1, BenchWork::cut);
    CHECK(cut_pieces(job, two) == std::vector<Index>{1, 2});
    CHECK(to_tick(job, two).size() == 1);
}

TEST_CASE("what the bench has cut is to be ticked at the saw", "[model][bench][saw]") {
    const auto job = bought_job();
    CHECK(to_tick(job, {}).empty());
    CHECK(to_tick(job, tick(job, {}, 3, BenchWork::cut)) == std::vector<std::size_t>{3});
    // Other work says nothing of the cut.
    CHECK(to_tick(job, tick(job, {}, 3, BenchWork::deburr)).empty());
}

TEST_CASE("a piece that the bench must cut again takes no cut of the saw from a good one",
          "[model][bench][saw]") {
    const auto& [cut_at, verdict] = GENERATE(table<int, model::BenchVerdict>(
        {{850, model::BenchVerdict::spoiled}, {950, model::BenchVerdict::rework}}));
    auto job = bought_job();
    auto& length = job.resolved.pieces[0].length;
    length = mm(cut_at);
    const auto ticks = tick(job, {}, 0, BenchWork::cut);
    length = mm(900);
    REQUIRE(seen(job, ticks, 0).verdict == verdict);
    CHECK(to_tick(job, ticks).empty());
    cut(job, 0);
    for (const auto& all : {ticks, tick(job, ticks, 1, BenchWork::cut)}) {
        CHECK(seen(job, all, 1).is_cut_at_saw);
        CHECK_FALSE(seen(job, all, 0).is_cut_at_saw);
    }
}

TEST_CASE("pieces of one length and two marks are told apart", "[model][bench][saw]") {
    auto job = bought_job();
    job.resolved.marks.push_back(job.resolved.marks.at(0));
    job.resolved.marks.back().name = "A9";
    job.resolved.pieces[1].mark = static_cast<Index>(job.resolved.marks.size() - 1);
    job.project.stock[0].at_saw[0].cuts[1].mark = "A9";
    CHECK(to_tick(job, tick(job, {}, 1, BenchWork::cut)) == std::vector<std::size_t>{1});
    cut(job, 0);
    const auto ticks = tick(job, {}, 1, BenchWork::cut);
    CHECK(cut_pieces(job, ticks) == std::vector<Index>{0, 1});
    CHECK(seen(job, ticks, 0).is_cut_at_saw);
    CHECK_FALSE(seen(job, ticks, 1).is_cut_at_saw);
}

TEST_CASE("a piece cut at the bench counts beside those that the saw has cut of its like",
          "[model][bench][saw]") {
    auto job = bought_job();
    cut(job, 0);
    REQUIRE(cut_pieces(job, {}) == std::vector<Index>{0});
    const auto alike = model::alike_at_saw(job.project, job.catalogue, job.resolved);
    const auto rows = model::bench_pieces(job.project, job.catalogue, job.resolved, {});
    // The first one stands there as cut: it is another one that is cut now.
    const auto ticks = model::ticked_beside_saw(job.project, job.catalogue, job.resolved, {}, rows,
                                                alike, seen(job, {}, 1), BenchWork::cut);
    REQUIRE(ticks);
    CHECK(cut_pieces(job, *ticks) == std::vector<Index>{0, 1});
    CHECK(to_tick(job, *ticks).size() == 1);
}

TEST_CASE("further work on a piece that the saw has cut keeps its cut to it",
          "[model][bench][saw]") {
    auto job = bought_job();
    cut(job, 0);
    const auto alike = model::alike_at_saw(job.project, job.catalogue, job.resolved);
    const auto rows = model::bench_pieces(job.project, job.catalogue, job.resolved, {});
    const auto ticks = model::ticked_beside_saw(job.project, job.catalogue, job.resolved, {}, rows,
                                                alike, seen(job, {}, 0), BenchWork::deburr);
    REQUIRE(ticks);
    REQUIRE(ticks->pieces.size() == 1);
    CHECK(ticks->pieces[0].is_done(BenchWork::cut));
    CHECK(cut_pieces(job, *ticks) == std::vector<Index>{0});
    CHECK(to_tick(job, *ticks).empty());
}
