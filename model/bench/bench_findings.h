// What the bench knows of the findings: pieces that the saw has cut and that fit nothing any more.
#pragma once

#include "model/bench/bench.h"
#include "model/resolve/finding.h"

#include <vector>

namespace model {

// Of a piece that the bench can rework: into what, and where that is said. Of one that is drilled
// that it is, and as the number "undrilled" the longest part of it without holes.
void tell_of_bench(const Project& project,
                   const Catalogue& catalogue,
                   const Resolved& resolved,
                   const BenchTicks& ticks,
                   std::vector<Finding>& findings);

}  // namespace model
