// A plan as it is handed out, from a packing.
#pragma once

#include "engine/cutting/nest.h"
#include "engine/cutting/task.h"

namespace engine::cutting {

// `packing` is in kinds; kinds of equal length are told apart again.
NestPlan plan_of(const NestProblem& problem, const Task& task, const Packing& packing);

}  // namespace engine::cutting
