// Members become bars: planes found, section walls laid on them, faults reported.
#pragma once

#include "model/resolve/skeleton.h"
#include "model/resolve/values.h"

#include <span>
#include <vector>

namespace model {

// One shape per stock of the project, in its order; unusable ones have section == no_index.
std::vector<StockShape> stock_shapes(const Project& project,
                                     const Catalogue& catalogue,
                                     std::vector<Finding>& findings);

// Planes, origin and placement of a frame.
ResolvedFrame frame_values(const Frame& frame, Values& values);

// The bars of all members that can be laid out, in the members' order.
std::vector<Bar> bars_of(const Project& project,
                         const Frame& frame,
                         const ResolvedFrame& placed,
                         std::span<const StockShape> shapes,
                         Values& values,
                         std::vector<Finding>& findings);

}  // namespace model
