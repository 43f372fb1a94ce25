// Fewer layouts for the same bars: fewer stops to set. That alone is as hard as nesting; what comes
// of it is good and not proven least.
#pragma once

#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

namespace engine::cutting {

// Alike bars as one entry.
Packing merged(const Packing& packing);

// Packs the items of `task` into as many bars of each kind as `packing` does, both by items. Takes
// up to so many steps.
Packing with_fewer_layouts(const Task& task, Packing packing, std::int64_t steps, Effort& effort);

}  // namespace engine::cutting
