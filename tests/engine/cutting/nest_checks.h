// What every nest must satisfy, worked out apart from the program's own check; and the cheapest
// plan of a small problem, found by trying everything.
#pragma once

#include "engine/cutting/nest.h"

#include <cstdint>
#include <optional>
#include <string>

namespace tests {

// Why the plan cannot be cut from the problem's bars; empty where it can.
std::string why_not(const engine::NestProblem& problem, const engine::NestPlan& plan);

struct LeastPrice {
    std::int64_t cost = 0;
    std::int64_t bought_length = 0;

    auto operator<=>(const LeastPrice&) const = default;
};

// Every way to share the pieces out to bars; nothing where there is none. For some eight pieces.
std::optional<LeastPrice> least_price_by_trying(const engine::NestProblem& problem);

// A problem drawn from `seed`: up to so many pieces.
engine::NestProblem random_nest(std::uint32_t seed, int most_pieces);

}  // namespace tests
