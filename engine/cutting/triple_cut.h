// Cuts on three items: of a whole plan, the bars that hold two of the three cannot be more than
// half as many as the three. The relaxation often takes half a bar for each two of them ("subset
// row" cuts, Jepsen et al. 2008, and for bins Wei et al. 2020; from memory).
#pragma once

#include "engine/cutting/column_bound.h"
#include "engine/cutting/task.h"

#include <cstddef>
#include <vector>

namespace engine::cutting {

// So many of those that hold two of the three, by amounts, that whole bars cannot; the worst first,
// no more than `most`, none of `known`.
std::vector<Triple> violated_triples(const Task& task,
                                     const Relaxed& relaxed,
                                     const std::vector<Triple>& known,
                                     std::size_t most);

// What a pattern counts in the cut: a half of what it holds of the three, rounded down.
int halves(const Triple& triple, const Pattern& pattern);
// What all bars of a whole plan may count together.
int most_halves(const Task& task, const Triple& triple);

}  // namespace engine::cutting
