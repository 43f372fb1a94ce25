// Stock that a piece may be cut from alike.
#pragma once

#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// For each stock the first one of its section and alloy: a piece is the same from either.
std::vector<Index> first_stocks_alike(const Project& project);

}  // namespace model
