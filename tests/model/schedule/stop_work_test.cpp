#include "model/schedule/stop_work.h"

#include "tests/model/schedule/saw_job.h"

#include <catch2/catch.hpp>

#include <algorithm>

namespace {

void make(tests::SmallJob& job, const std::vector<model::Edit>& edits) {
    for (const auto& edit : edits) {
        auto changed = model::apply(job.project, edit);
        if (!changed) FAIL(engine::to_text(changed.error()));
        job.project = std::move(changed).value();
    }
}

std::vector<model::SawBar> bars_of(const tests::SmallJob& job) {
    return model::saw_bars(job.project, job.catalogue, job.resolved, {tests::plan_of(job)});
}

std::vector<model::StopWork> work_of(const tests::SmallJob& job) {
    return model::stop_work(job.project, job.catalogue, job.resolved, bars_of(job));
}

tests::SmallJob bought() {
    auto job = tests::saw_job({1500, 1400, 600, 600});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    make(job, model::bars_bought(job.project, job.catalogue, job.resolved, {tests::plan_of(job)}));
    return job;
}

}  // namespace

TEST_CASE("a cut that is made stays at its place in the order of the stop",
          "[model][schedule][stops]") {
    auto job = bought();
    const auto before = work_of(job);
    REQUIRE(before.size() == 3);  // both of 600 mm come from one bar
    CHECK(before[2].cuts.size() == 2);
    for (const auto& row : before) CHECK_FALSE(row.is_made);
    const auto ticked =
        model::cuts_ticked(job.project, job.catalogue, job.resolved, {tests::plan_of(job)},
                           before[0].cuts, model::CutState::cut);
    REQUIRE(ticked);
    make(job, *ticked);
    const auto after = work_of(job);
    REQUIRE(after.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CAPTURE(i);
        CHECK(after[i].mark == before[i].mark);
        CHECK(after[i].setting == before[i].setting);
        CHECK(after[i].is_made == (i == 0));
    }
    // Taken back it is as it was.
    const auto back =
        model::cuts_ticked(job.project, job.catalogue, job.resolved, {tests::plan_of(job)},
                           after[0].cuts, model::CutState::planned);
    REQUIRE(back);
    make(job, *back);
    CHECK_FALSE(work_of(job)[0].is_made);
}

TEST_CASE("of two pieces at one setting the one that is cut stands apart",
          "[model][schedule][stops]") {
    auto job = bought();
    const auto pair = work_of(job)[2];
    const auto ticked =
        model::cuts_ticked(job.project, job.catalogue, job.resolved, {tests::plan_of(job)},
                           {pair.cuts.back()}, model::CutState::cut);
    REQUIRE(ticked);
    make(job, *ticked);
    const auto rows = work_of(job);
    REQUIRE(rows.size() == 4);
    CHECK(rows[2].is_made);
    CHECK_FALSE(rows[3].is_made);
    CHECK(rows[2].setting == rows[3].setting);
    CHECK(rows[2].cuts.size() == 1);
}

TEST_CASE("a line of the stop says how many of its pieces are of the opposite hand",
          "[model][schedule][stops]") {
    auto job = bought();
    CHECK(work_of(job)[2].opposite == 0);
    job.resolved.pieces[3].hand = model::Hand::opposite;
    const auto rows = work_of(job);
    REQUIRE(rows.size() == 3);
    CHECK(rows[2].cuts.size() == 2);
    CHECK(rows[2].opposite == 1);
}
