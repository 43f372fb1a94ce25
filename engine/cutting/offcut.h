// What is left over in one bar rather than spread: the longest single offcut that the same bars
// allow.
#pragma once

#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <cstdint>

namespace engine::cutting {

// Free room at the end of a bar.
std::int64_t longest_free(const Task& task, const Packing& packing);

// Packs all items of `task` into its bars, as `packing` does, both by items, or better. Takes up to
// so many steps.
Packing with_longer_offcut(const Task& task, Packing packing, std::int64_t steps, Effort& effort);

}  // namespace engine::cutting
