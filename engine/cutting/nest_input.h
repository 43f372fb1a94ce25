// What is wrong with a nest as it is asked for, and the task that it becomes.
#pragma once

#include "engine/cutting/nest.h"
#include "engine/cutting/task.h"
#include "engine/result.h"

#include <optional>

namespace engine::cutting {

// Far above any workshop, and such that no sum of ours overflows.
constexpr std::int64_t longest_length = 100'000'000'000;
constexpr std::int64_t most_pieces = 20'000;
constexpr std::size_t most_stock = 400;
constexpr std::int64_t highest_price = 1'000'000'000;

std::optional<Error> mistake(const NestProblem& problem);

// In a unit of its own, the largest that loses nothing. Kinds of the task are places of
// problem.pieces, the first of those with equal length; bars are places of problem.stock.
Task task_of(const NestProblem& problem);

}  // namespace engine::cutting
