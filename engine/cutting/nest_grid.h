// A nest on a coarser grid than its lengths are told in. A saw does not hold a hundredth of a
// millimetre, and what it does not hold costs the search time.
#pragma once

#include "engine/cutting/nest.h"

#include <cstdint>

namespace engine {

// As nest(problem), with every piece and its kerf taken as so long as whole steps up and every bar
// as whole steps down; the plan is told in the problem's own lengths and can be cut as it says.
//
// What is proven is proven of pieces that are up to one step longer. Where the lengths of all
// pieces, bars and trims, the kerf and the least held length are whole steps it is no other
// problem, and where they are whole numbers of anything coarser than the step (1/64 in in
// nanometres, with a step of 0.1 mm) nothing is rounded. Where the steps leave no room, such as for
// a piece as long as its bar, it is nested as it is.
Result<Nest> nest_on_grid(const NestProblem& problem,
                          std::int64_t step,
                          const NestLimits& limits = {});

namespace cutting {

// In steps. A plan for it is one for `problem`, with other offcuts. `problem` is without mistake.
NestProblem on_grid(const NestProblem& problem, std::int64_t step);

// The same bars and cuts, with lengths and offcuts as `problem` has them.
NestPlan retold(const NestProblem& problem, NestPlan plan);

}  // namespace cutting

}  // namespace engine
