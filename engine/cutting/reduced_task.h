// A task without what is done, and patterns of the whole one put into its terms.
#pragma once

#include "engine/cutting/task.h"

#include <vector>

namespace engine::cutting {

// Items move to other places: `place[old]` is the new one, or -1 for what is gone.
struct Moved {
    Task task;
    std::vector<int> place;
};

Moved without_done_items(const Task& task);

// Reorders by weight, the heaviest first, and leaves out what is not wanted any more.
Moved reordered(const Task& task);

// What is gone is left out of it, and never more than wanted. No parts may be left.
Pattern moved(const Moved& to, const Pattern& pattern);
std::vector<Pattern> moved(const Moved& to, const std::vector<Pattern>& patterns);

}  // namespace engine::cutting
