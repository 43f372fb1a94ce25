// Hidden edges of what is small on paper. Only files of this folder use it.
#pragma once

#include "engine/drawing/page.h"

#include <array>
#include <vector>

namespace model {

// The dashes of a line through those points, adds them. Hidden edges are dashed, each from corner
// to corner (ISO 128-2, line type 02, from memory); dashes of twelve line widths as there, which a
// wide pen would have, are longer than a cleat is on paper: these are a quarter of that.
void append_short_dashes(std::vector<std::array<engine::PagePoint, 2>>& dashes,
                         const std::vector<engine::PagePoint>& line);

}  // namespace model
