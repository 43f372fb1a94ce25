// Which numbers of bars might do: counts of the priced bars that meet every need proven so far, the
// cheapest first, and of equal cost the one with the least bought length.
#pragma once

#include "engine/cutting/column_bound.h"
#include "engine/cutting/effort.h"
#include "engine/cutting/task.h"

#include <compare>
#include <cstdint>
#include <vector>

namespace engine::cutting {

struct Price {
    std::int64_t cost = 0;
    std::int64_t bought = 0;

    auto operator<=>(const Price&) const = default;
};

// What is free of charge is always there in full supply: it is no choice.
struct CountVector {
    Price price;
    std::vector<int> counts;  // of all bars

    auto operator<=>(const CountVector&) const = default;
};

inline bool is_free(const Bar& bar) { return bar.price == 0 && bar.bought == 0; }

bool meets(const CountVector& vector, const Need& need);

struct CountVectors {
    std::vector<CountVector> vectors;
    bool is_complete = true;  // all there are in the range
};

// Those that cost at least `from` and are less than `below`; at most `most` of them.
CountVectors count_vectors(const std::vector<Bar>& bars,
                           const std::vector<Need>& needs,
                           std::int64_t from,
                           const Price& below,
                           std::size_t most);

// No vector that meets the need costs less; where none does, more than all bars do.
std::int64_t least_cost(const std::vector<Bar>& bars, const Need& need);

}  // namespace engine::cutting
