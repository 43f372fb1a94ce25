// Branch and price: whether given bars hold all items, settled for good. Where the relaxation does
// not decide, two items are tied together in one bar, or else kept apart (Ryan & Foster 1981, for
// items of several alike: one of each is tied, or none may meet; from memory).
#pragma once

#include "engine/cutting/column_bound.h"
#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <cstdint>
#include <optional>

namespace engine::cutting {

struct Settled {
    std::optional<Packing> packing;  // in kinds
    bool is_refuted = false;         // proven: there is none
};

// Gives up after so many steps.
Settled branch(const Task& task, const Relaxed& relaxed, std::int64_t steps, Effort& effort);

}  // namespace engine::cutting
