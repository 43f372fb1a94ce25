// Of plans that buy the same, the one that leaves most of the bars at home whole.
#pragma once

#include "engine/cutting/nest.h"
#include "model/schedule/bar_plan.h"

#include <cstdint>
#include <vector>

namespace model {

// Whole bars at home cost nothing any more, but are worth most whole: of plans that buy the same
// the one is taken that begins least of their length, as far as it is found with little work.
// `from` tells of each stock of the problem where its bars come from; lengths are nested in whole
// `grid`.
void spare_home_bars(const engine::NestProblem& problem,
                     const std::vector<BarFrom>& from,
                     std::int64_t grid,
                     engine::NestLimits limits,
                     engine::NestPlan& plan);

}  // namespace model
