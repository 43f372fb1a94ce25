// Places in a row, moved apart as little as it takes.
#pragma once

#include <vector>

namespace model {

// Rising places that lie at least `pitch` apart, with the least sum of squares of their ways; where
// there is room, between the limits. `wanted` must rise.
std::vector<double> spread(const std::vector<double>& wanted,
                           double pitch,
                           double least,
                           double most);

}  // namespace model
