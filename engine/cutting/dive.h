// A plan from the relaxation: whole bars of it are taken, what is left is relaxed again, and so on
// down; where that fails, once more with another choice near the top (limited discrepancy search,
// Harvey & Ginsberg 1995; in column generation Sadykov et al. 2019; from memory).
#pragma once

#include "engine/cutting/column_bound.h"
#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <cstdint>
#include <optional>

namespace engine::cutting {

struct Freedom {
    int others = 2;  // how often another choice than the first may be made
    int depth = 4;   // and in how many choices from the top
};

class Dive {
public:
    // Ends after so many steps.
    Dive(Effort& effort, std::int64_t steps, Care care)
        : effort_{effort}, end_{effort.done() + steps}, care_{care} {}

    // All items of the task in its bars, in kinds; `relaxed` is the task's own relaxation.
    std::optional<Packing> packing(const Task& task, const Relaxed& relaxed, Freedom freedom);

private:
    bool is_over() const { return effort_.is_over() || effort_.done() >= end_; }
    bool go(const Task& task, const Relaxed& relaxed, Freedom freedom);
    bool take(const Task& task, const Relaxed& relaxed, Packing chosen, Freedom freedom);
    bool finish(const Task& task, const std::vector<Pattern>& patterns, Freedom freedom);

    Effort& effort_;
    std::int64_t end_;
    Care care_;       // of the relaxations on the way
    Packing packed_;  // in kinds
};

// Prices by which a relaxation in given bars leaves as much room over as can be.
std::vector<double> prices_by_room(const Task& task);

}  // namespace engine::cutting
