// Places taken in turn so that each lies as far as can be from those before. Only files of this
// folder use it.
#pragma once

#include "engine/geometry/box.h"

#include <cstddef>
#include <span>
#include <vector>

namespace model {

// Numbers in `places`; the first is the one furthest from the middle of all, of equals the first.
std::vector<std::size_t> turns_far_apart(std::span<const engine::Point> places);

}  // namespace model
