// Two layouts for three, one for two: the same bars and pieces, cut in fewer ways.
#pragma once

#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <cstdint>

namespace engine::cutting {

// Until none is found or the effort reaches `end`.
Packing swapped(const Task& task, Packing packing, std::int64_t end, Effort& effort);

}  // namespace engine::cutting
