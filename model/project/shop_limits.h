// Ends within which a shop may set its rules of layout.
#pragma once

#include "engine/measure/length.h"

namespace model {

// In fastener diameters, hole centre to edge. Below two diameters the bearing strength falls, and
// less than 1.5 is never taken: Aluminum Design Manual 2010 and 2015, J.3.4 and J.4.3, from memory.
inline constexpr double least_edge_distance = 1.5;
inline constexpr double most_edge_distance = 20.0;  // keeps nonsense out

// In fastener diameters, centre to centre: never under 3, NAVEDTRA 14018 p. 13.
inline constexpr double least_pitch = 3.0;
inline constexpr double most_pitch = 50.0;  // keeps nonsense out

// Sheet that must be left between a hole or a cut-out and an edge: common practice.
inline constexpr engine::Length least_sheet_land =
    engine::Length::from_nm(engine::Length::nm_per_inch / 16);

}  // namespace model
