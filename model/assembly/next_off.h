// Which part comes off next while a frame is taken apart. Only files of this folder use it.
#pragma once

#include "model/assembly/standing.h"

#include <optional>
#include <vector>

namespace model {

// None where nothing comes off. Parts by themselves before several together, but for what comes
// apart; what the others are put on comes off last.
std::optional<Coming> next_off(const Apart& apart,
                               const Standing& now,
                               const std::vector<Part>& standing);

}  // namespace model
