// A job of nothing but square pieces of one stock, for what is done at the saw.
#pragma once

#include "model/schedule/bar_plan.h"

#include "tests/model/schedule/small_job.h"

#include <vector>

namespace tests {

constexpr engine::Nm mm(std::int64_t count) { return count * engine::Length::nm_per_mm; }

// Of these lengths in millimetres, each of a mark of its own length: "L1500"; kerf 3 mm, 5 mm off
// each end, nothing asked of the vice.
SmallJob saw_job(const std::vector<int>& lengths_mm);

// Of its first stock.
model::BarPlan plan_of(const SmallJob& job, model::PlanEffort effort = model::PlanEffort::nested);

}  // namespace tests
