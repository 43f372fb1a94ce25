// What counts after cost and bought length: the longest single offcut, then few layouts.
#pragma once

#include "engine/cutting/effort.h"
#include "engine/cutting/search.h"
#include "engine/cutting/task.h"

namespace engine::cutting {

// The plan that was found, in kinds; it may use fewer bars than its vector has, never others.
Packing polished(const Task& task, const Found& found, Effort& effort);

}  // namespace engine::cutting
