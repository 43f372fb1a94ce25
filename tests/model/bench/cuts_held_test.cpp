// Which cut at the saw a piece of the bench was, and what becomes of it when the piece is reworked
// or put away.
#include "model/bench/cuts_held.h"

#include "model/schedule/findings.h"

#include "tests/model/bench/bought_job.h"

using model::BenchWork;
using model::CutState;
using namespace tests;

namespace {

constexpr model::Index first = 0;

std::optional<model::CutHeld> held_by_first(const SmallJob& job, const model::BenchTicks& ticks) {
    const auto held = model::cuts_held(job.project, job.catalogue, job.resolved, ticks);
    REQUIRE(held.size() == ticks.pieces.size());
    return held.at(0);
}

model::BenchTicks reworked(const SmallJob& job, const model::BenchTicks& ticks) {
    const auto done = model::reworked(job.project, job.catalogue, job.resolved, ticks, first);
    INFO((done ? "" : engine::to_text(done.error())));
    REQUIRE(done);
    return *done;
}

// What the saw is told when the first piece is reworked.
void tell_saw(SmallJob& job, const model::BenchTicks& before) {
    const auto held = held_by_first(job, before);
    REQUIRE(held);
    const auto edit =
        model::cut_made_anew(job.project, job.catalogue, job.resolved, held->place, first);
    REQUIRE(edit);
    make(job, *edit);
}

model::SawSeen seen_at_saw(const SmallJob& job) {
    return model::saw_seen(job.project, job.catalogue, job.resolved, 0);
}

std::ptrdiff_t unused_told(const SmallJob& job) {
    return std::ranges::count(model::bar_findings(job.project, job.catalogue, job.resolved),
                              "cut_piece_unused", &model::Finding::code);
}

// Cut at the saw and ticked at the bench, then all of its length are wanted 20 mm shorter.
struct ToRework {
    ToRework() {
        cut(job, 1);
        ticks = tick(job, {}, first, BenchWork::cut);
        change_length(job, 900, 880);
        REQUIRE(seen(job, ticks, first).verdict == model::BenchVerdict::rework);
    }

    SmallJob job = bought_job();
    model::BenchTicks ticks;
};

}  // namespace

TEST_CASE("a piece of the bench is known at the saw by its length and ends as they were",
          "[model][bench][saw]") {
    ToRework it;
    const auto held = held_by_first(it.job, it.ticks);
    REQUIRE(held);
    CHECK(held->place == model::CutPlace{"angle", 0, 1});
    CHECK_FALSE(held->is_used);
    CHECK_FALSE(held->is_as_before);
    // A piece of another length was none of what the saw has cut.
    it.ticks.pieces[0].made.length += mm(1);
    CHECK_FALSE(held_by_first(it.job, it.ticks));
    it.ticks.pieces[0].made.length -= mm(1);
    it.ticks.pieces[0].made.end_words = "square; mitre 45 deg across leg a, long point at the heel";
    CHECK_FALSE(held_by_first(it.job, it.ticks));
}

TEST_CASE(
    "what is reworked at the bench is at the saw a cut of the new length, and is not made anew",
    "[model][bench][saw]") {
    ToRework it;
    REQUIRE(unused_told(it.job) == 1);
    const auto room_before = seen_at_saw(it.job).bars.at(0).next_start;
    tell_saw(it.job, it.ticks);
    const auto ticks = reworked(it.job, it.ticks);
    const auto& cut = it.job.project.stock[0].at_saw[0].cuts[1];
    CHECK(model::stated_length(it.job.project, it.job.resolved, cut.length).value() == mm(880));
    CHECK(cut.state == CutState::cut);
    CHECK(seen_at_saw(it.job).cut.size() == 1);
    CHECK(unused_told(it.job) == 0);
    // The bar has given 900 mm for it.
    CHECK(seen_at_saw(it.job).bars.at(0).next_start == room_before);
    CHECK(seen(it.job, ticks, first).is_cut_at_saw);
    CHECK(to_tick(it.job, ticks).empty());
}

TEST_CASE("when that step at the saw is undone, the bench says so and no cut is booked twice",
          "[model][bench][saw]") {
    ToRework it;
    const auto ticks = reworked(it.job, it.ticks);  // the saw has not been told, or it was undone
    const auto row = seen(it.job, ticks, first);
    CHECK(row.is_cut_as_before);
    CHECK(row.cut == model::CutPlace{"angle", 0, 1});
    CHECK(model::is_told_at_saw(row));
    CHECK(to_tick(it.job, ticks).empty());
    const auto rows = model::bench_pieces(it.job.project, it.job.catalogue, it.job.resolved, ticks);
    const auto edits =
        model::cuts_made_anew(it.job.project, it.job.catalogue, it.job.resolved, rows);
    REQUIRE(edits.size() == 1);
    make(it.job, edits.front());
    CHECK(unused_told(it.job) == 0);
    CHECK_FALSE(seen(it.job, ticks, first).is_cut_as_before);
}

TEST_CASE("a piece put away is spoiled at the saw, and another one is planned",
          "[model][bench][saw]") {
    ToRework it;
    const auto ticks = reworked(it.job, it.ticks);
    // The size is as it was: the piece is too short now, whichever of both the saw knows of it.
    const bool is_told = GENERATE(true, false);
    if (is_told) tell_saw(it.job, it.ticks);
    change_length(it.job, 880, 900);
    REQUIRE(seen(it.job, ticks, first).verdict == model::BenchVerdict::spoiled);
    const auto held = held_by_first(it.job, ticks);
    REQUIRE(held);
    CHECK(held->is_as_before != is_told);
    const auto edit = model::cut_put_away(it.job.project, held->place);
    REQUIRE(edit);
    make(it.job, *edit);
    CHECK(seen_at_saw(it.job).cut.empty());
    const auto away = model::put_away(ticks, ticks.pieces[0].piece);
    CHECK(seen(it.job, away, first).state(BenchWork::cut) == model::WorkState::open);
    const auto plan = tests::plan_of(it.job);
    CHECK(plan.cut.empty());
    CHECK(plan.left_out.empty());
}

TEST_CASE("where the saw has cut fewer than the bench, those that are right have their cuts first",
          "[model][bench][saw]") {
    auto job = bought_job();
    cut(job, 0);
    auto ticks = tick(job, {}, 0, BenchWork::cut);
    ticks = tick(job, ticks, 1, BenchWork::cut);
    job.resolved.pieces[0].length = mm(880);
    const auto held = model::cuts_held(job.project, job.catalogue, job.resolved, ticks);
    CHECK_FALSE(held.at(0));
    REQUIRE(held.at(1));
    CHECK(held.at(1)->is_used);
}
