// A plan found at once: every piece in turn, the longest first, into the first bar that has room.
#pragma once

#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <optional>
#include <vector>

namespace engine::cutting {

// The most room for the money first; what is free of charge before all, the smallest first. Places
// in Task::bars.
std::vector<int> bars_by_worth(const Task& task);

// First fit decreasing (Johnson 1973, from memory: never much more than 11/9 of the fewest bars
// where all are alike), of as many bars as there are, begun in that order. Which items are to be
// kept apart is not looked at. Nothing where not everything was placed, or where it would take too
// long to try.
std::optional<Packing> first_fit(const Task& task, Effort& effort);

}  // namespace engine::cutting
