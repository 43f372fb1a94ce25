// A rectangle of sheet less the rectangles that stand in its way, as outlines.
#pragma once

#include "model/resolve/hole_layout.h"
#include "model/resolve/resolved.h"

#include <span>
#include <vector>

namespace model {

constexpr bool share_area(const Region& a, const Region& b) {
    return a.lo[0] < b.hi[0] && b.lo[0] < a.hi[0] && a.lo[1] < b.hi[1] && b.lo[1] < a.hi[1];
}

Region grown(Region region, Nm by);

struct SheetShape {
    Region bounds;             // the least rectangle that holds it
    Outline outline;           // in the coordinates of the rectangles; no corners: nothing is left
    std::vector<Region> gone;  // what of its bounds is no sheet
    bool fell_apart = false;   // only the largest of several parts is kept
};

// Corners that only touch are parted, so that no two edges of the outline meet but at their ends.
SheetShape sheet_without(const Region& whole, std::span<const Region> taken);

// The rectangle that is left when each obstacle in turn cuts off the side that costs least area;
// lo >= hi in a direction where nothing is left.
Region opening_between(Region whole, std::span<const Region> obstacles);

}  // namespace model
