// Gauge lines shared by many holes, so that one fence setting of the drill press serves many bars.
#pragma once

#include "model/resolve/hole_layout.h"

#include <array>
#include <span>
#include <vector>

namespace model {

// One lap's layout with what its two directions are gauges on: direction 0 is a gauge on the lower
// piece's stock, direction 1 on the upper piece's.
struct LineChoice {
    Layout layout;
    std::array<Index, 2> stock{no_index, no_index};
    std::array<bool, 2> on_marks{};  // whether the gauge itself lies on tape marks in a direction
};

inline constexpr int most_per_lap = 12;

// Where the centres of a layout lie, in nm in the lap's own coordinates.
using Centres = std::vector<std::array<Nm, 2>>;

// Places all layouts. Those with no freedom come first and set the lines; the others take lines of
// their stock that lie within their freedom (the one with the greatest margin), or make new ones
// where the margin is greatest.
std::vector<Centres> place_on_lines(std::span<const LineChoice> choices, std::size_t stock_count);

}  // namespace model
