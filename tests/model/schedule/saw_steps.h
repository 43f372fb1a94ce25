// Steps at the saw, done to a job of nothing but square pieces.
#pragma once

#include "model/schedule/bar_work.h"

#include "tests/model/schedule/saw_job.h"

#include <catch2/catch.hpp>

#include <vector>

namespace tests {

inline void make(SmallJob& job, const model::Edit& edit) {
    auto changed = model::apply(job.project, edit);
    if (!changed) FAIL(engine::to_text(changed.error()));
    job.project = std::move(changed).value();
}

inline void make(SmallJob& job, const std::vector<model::Edit>& edits) {
    for (const auto& edit : edits) make(job, edit);
}

inline void buy(SmallJob& job) {
    make(job, model::bars_bought(job.project, job.catalogue, job.resolved, {plan_of(job)}));
}

inline void mark_cut(SmallJob& job, std::size_t bar, std::size_t cut, model::CutState state) {
    const auto edit = model::cut_marked(job.project, job.resolved, {{"angle", bar, cut}}, state);
    if (!edit) FAIL(engine::to_text(edit.error()));
    make(job, *edit);
}

inline SmallJob two_bars() {
    auto job = saw_job({1500, 1200, 900, 700, 400});
    job.project.stock[0].bars = {{.length = "3 m", .price = 30.0}};
    return job;
}

}  // namespace tests
