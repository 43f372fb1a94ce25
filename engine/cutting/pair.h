// Two items tied together or kept apart: the task of either branch, and its patterns.
#pragma once

#include "engine/cutting/column_bound.h"
#include "engine/cutting/reduced_task.h"
#include "engine/cutting/task.h"

#include <optional>
#include <vector>

namespace engine::cutting {

struct Pair {
    int first = 0;
    int second = 0;  // may be the same: two alike
};

// The pair on which the relaxation is least decided; nothing where all its bars are whole.
std::optional<Pair> undecided_pair(const Task& task, const Relaxed& relaxed);

struct Branched {
    Task task;
    std::vector<Pattern> patterns;
};

Branched tied(const Task& task, const Pair& pair, const std::vector<Pattern>& patterns);
Branched kept_apart(const Task& task, const Pair& pair, const std::vector<Pattern>& patterns);

}  // namespace engine::cutting
