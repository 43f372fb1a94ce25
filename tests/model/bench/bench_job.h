// The small job with ticks, for what is done at the bench.
#pragma once

#include "model/bench/bench.h"

#include "tests/model/schedule/small_job.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

namespace tests {

// The pieces of small_job.
enum JobPieces : model::Index { post_left, post_right, rail, flat_front, shim, flat_back };

constexpr engine::Nm inches_64ths(std::int64_t count) {
    return count * engine::Length::nm_per_inch / 64;
}
constexpr engine::Nm whole_inches(std::int64_t count) { return inches_64ths(64 * count); }

inline model::BenchTicks tick(const SmallJob& job,
                              const model::BenchTicks& ticks,
                              model::Index piece,
                              model::BenchWork work) {
    const auto next = model::ticked(job.project, job.catalogue, job.resolved, ticks, piece, work);
    INFO((next ? "" : engine::to_text(next.error())));
    REQUIRE(next);
    return *next;
}

// Cut and drilled as the job has it.
inline model::BenchTicks made(const SmallJob& job, model::Index piece) {
    auto ticks = tick(job, {}, piece, model::BenchWork::cut);
    return tick(job, ticks, piece, model::BenchWork::drill);
}

inline model::BenchPiece seen(const SmallJob& job,
                              const model::BenchTicks& ticks,
                              model::Index piece) {
    const auto rows = model::bench_pieces(job.project, job.catalogue, job.resolved, ticks);
    const auto row = std::ranges::find(rows, piece, &model::BenchPiece::piece);
    REQUIRE(row != rows.end());
    return *row;
}

inline model::Hole& hole_of(SmallJob& job, model::Index piece, model::Index hole) {
    return job.resolved.holes[job.resolved.pieces[piece].first_hole + hole];
}

}  // namespace tests
