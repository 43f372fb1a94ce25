// What the bench adds to the findings of pieces that fit nothing any more.
#include "model/bench/bench_findings.h"

#include "model/mend/mend.h"
#include "model/schedule/findings.h"

#include "tests/model/bench/bought_job.h"

using model::BenchWork;
using namespace tests;

namespace {

// The only finding of a cut that fits nothing, with what the bench says of it.
model::Finding told(const SmallJob& job, const model::BenchTicks& ticks) {
    auto findings = model::bar_findings(job.project, job.catalogue, job.resolved);
    std::erase_if(findings, [](const auto& it) { return it.code != "cut_piece_unused"; });
    REQUIRE(findings.size() == 1);
    model::tell_of_bench(job.project, job.catalogue, job.resolved, ticks, findings);
    return findings.front();
}

model::Mend way_of(const SmallJob& job, const model::Finding& finding) {
    const auto ways =
        model::ways_to_mend({job.project, job.catalogue, job.resolved}, std::vector{finding});
    REQUIRE(ways.size() == 1);
    return ways.front();
}

SmallJob job_with_cut() {
    auto job = bought_job();
    job.resolved.shop.least_offcut = mm(300);
    cut(job, 0);
    return job;
}

// Holes of 4 mm at these places.
model::BenchTicks drilled(const SmallJob& job, const std::vector<int>& places_mm) {
    auto ticks = tick(job, {}, 0, BenchWork::cut);
    auto& piece = ticks.pieces[0];
    piece.done[static_cast<std::size_t>(BenchWork::drill)] = true;
    for (const int place : places_mm)
        piece.made.holes.push_back({.from_datum = mm(place), .gauge = mm(10), .diameter = mm(4)});
    return ticks;
}

}  // namespace

TEST_CASE("a finding of a cut that fits nothing says that the bench can rework it",
          "[model][bench][saw]") {
    auto job = job_with_cut();
    const auto ticks = tick(job, {}, 0, BenchWork::cut);
    change_length(job, 900, 880);
    const auto without = told(job, {});
    CHECK(without.mend == "lay it on the rack as an offcut");
    const auto finding = told(job, ticks);
    CHECK_THAT(finding.what, Catch::Contains("the bench can rework it into L900"));
    CHECK_THAT(finding.mend, Catch::StartsWith("rework it, and say so under Make > Bench: \"It is "
                                               "reworked\"; or lay it on the rack"));
}

TEST_CASE("of a piece that is drilled only what is beyond its holes is an offcut",
          "[model][bench][saw]") {
    auto job = job_with_cut();
    const auto ticks = drilled(job, {20, 40, 500, 880});
    change_length(job, 900, 950);
    const auto plain = way_of(job, told(job, {}));
    CHECK(plain.words == "Lay it on the rack as an offcut of 900 mm");
    const auto way = way_of(job, told(job, ticks));
    // Between the holes at 40 and 500 mm.
    CHECK(way.words ==
          "Lay it on the rack as an offcut of 456 mm: it has holes, and only what is "
          "beyond them counts");
    const auto room = model::saw_seen(job.project, job.catalogue, job.resolved, 0);
    for (const auto& edit : way.edits) make(job, edit);
    const auto& stock = job.project.stock[0];
    REQUIRE(stock.offcuts.size() == 1);
    CHECK(stock.offcuts[0].length == "456 mm");
    // Its bar has given all of it.
    CHECK(model::saw_seen(job.project, job.catalogue, job.resolved, 0).bars[0].next_start ==
          room.bars[0].next_start);
}

TEST_CASE("a piece with holes all along it is scrap", "[model][bench][saw]") {
    auto job = job_with_cut();
    const auto ticks = drilled(job, {200, 400, 600, 800});
    change_length(job, 900, 950);
    const auto way = way_of(job, told(job, ticks));
    CHECK(way.name == "scrap");
    for (const auto& edit : way.edits) make(job, edit);
    CHECK(job.project.stock[0].offcuts.empty());
    CHECK(job.project.stock[0].at_saw[0].cuts[0].state == model::CutState::spoiled);
}
