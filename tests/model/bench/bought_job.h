// Bars at the saw of which nothing is cut yet, and the same work at the bench.
#pragma once

#include "model/bench/saw_cuts.h"
#include "model/schedule/saw_seen.h"

#include "tests/model/bench/bench_job.h"
#include "tests/model/schedule/saw_steps.h"

namespace tests {

// Three of one length and one of another, all bought, none cut.
inline SmallJob bought_job() {
    auto job = saw_job({900, 900, 900, 700});
    auto& at_saw = job.project.stock[0].at_saw;
    at_saw.push_back({.length = "4000 mm"});
    for (const auto& piece : job.resolved.pieces) {
        at_saw[0].cuts.push_back(
            {.length = std::to_string(piece.length / mm(1)) + " mm",
             .ends = model::ends_text(job.project, job.catalogue, job.resolved, piece),
             .mark = job.resolved.marks[piece.mark].name});
    }
    return job;
}

inline void cut(SmallJob& job, std::size_t place) {
    job.project.stock[0].at_saw[0].cuts[place].state = model::CutState::cut;
}

// What is to be ticked at the saw, by place in its bar.
inline std::vector<std::size_t> to_tick(const SmallJob& job, const model::BenchTicks& ticks) {
    const auto bars =
        model::saw_bars(job.project, job.catalogue, job.resolved,
                        model::bar_plans(job.project, job.catalogue, job.resolved, {}));
    const auto alike = model::alike_at_saw(job.project, job.catalogue, job.resolved);
    const auto rows = model::bench_pieces(job.project, job.catalogue, job.resolved, ticks);
    std::vector<std::size_t> places;
    for (const auto& tick : model::cuts_to_tick(bars, alike, rows)) {
        CHECK(tick.bar == 1);
        places.push_back(tick.cut);
    }
    return places;
}

// All of that length are wanted shorter or longer than they were.
inline void change_length(SmallJob& job, int was_mm, int is_mm) {
    for (auto& piece : job.resolved.pieces) {
        if (piece.length == mm(was_mm)) piece.length = mm(is_mm);
    }
}

}  // namespace tests
