#include "tests/model/schedule/saw_job.h"

#include <algorithm>

namespace tests {

SmallJob saw_job(const std::vector<int>& lengths_mm) {
    auto job = small_job();
    job.project.stock[0].offcuts.clear();
    auto piece = job.resolved.pieces[0];
    piece.hand = model::Hand::none;
    piece.hole_count = 0;
    // All of these are of the pieces that are put away.
    job.resolved.joints.clear();
    job.resolved.fasteners.clear();
    job.resolved.holes.clear();
    job.resolved.pieces.clear();
    job.resolved.marks.clear();
    for (const int length : lengths_mm) {
        const auto name = "L" + std::to_string(length);
        auto mark = std::ranges::find(job.resolved.marks, name, &model::Mark::name);
        if (mark == job.resolved.marks.end()) {
            job.resolved.marks.push_back({.name = name});
            mark = job.resolved.marks.end() - 1;
        }
        piece.mark = static_cast<model::Index>(mark - job.resolved.marks.begin());
        piece.length = mm(length);
        job.resolved.pieces.push_back(piece);
    }
    for (auto& frame : job.resolved.frames) frame.first_piece = frame.piece_count = 0;
    job.resolved.frames[piece.frame].piece_count = static_cast<model::Index>(lengths_mm.size());
    job.resolved.shop.kerf = mm(3);
    job.resolved.shop.end_trim = mm(5);
    job.resolved.shop.least_held = 0;
    return job;
}

model::BarPlan plan_of(const SmallJob& job, model::PlanEffort effort) {
    return model::bar_plans(job.project, job.catalogue, job.resolved, {.effort = effort}).at(0);
}

}  // namespace tests
