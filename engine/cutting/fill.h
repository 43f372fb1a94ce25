// A plan found quickly: bar after bar, the longest piece left first and beside it what fills the
// bar best, over again in other orders of bars and with some slack allowed.
#pragma once

#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <optional>

namespace engine::cutting {

// All items in the bars that there are, or nothing where `tries` tries did not do it.
std::optional<Packing> filled(const Task& task, int tries, Effort& effort);

// The same with bars of which more are taken than needed; takes the cheapest for what they hold
// first. Nothing where not everything was placed.
std::optional<Packing> filled_greedily(const Task& task, Effort& effort);

}  // namespace engine::cutting
