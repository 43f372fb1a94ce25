// Parallel lines inside of polygons, which tell a cut face or a rest from what is built in, in
// black and white too.
#pragma once

#include "engine/drawing/page_items.h"

#include <array>
#include <vector>

namespace engine {

struct Hatching {
    double spacing = 2.0;     // mm between the lines; at least `least_hatch_spacing`
    double angle_deg = 45.0;  // anticlockwise from level, as seen
    Pen pen{.width = hair_width};

    bool operator==(const Hatching&) const = default;
};

constexpr double least_hatch_spacing = 0.2;  // mm

// The lines inside of the polygons; where polygons overlap, what an odd number of them covers. The
// lines lie as if they went through the page's corner, so that neighbours share them. Requires
// numbers that a page takes.
std::vector<std::array<PagePoint, 2>> hatch_lines(
    const std::vector<std::vector<PagePoint>>& polygons, const Hatching& hatching);

}  // namespace engine
