// On which side of a scan's surface a thing stands: in it, through it or clear of it.
#pragma once

#include "engine/geometry/convex_body.h"
#include "engine/geometry/placement.h"
#include "model/room/scans.h"

#include <span>
#include <vector>

namespace model {

// Bodies of the room in a scan's own axes.
std::vector<engine::ConvexBody> in_axes_of(const engine::Placement& scan_place,
                                           std::span<const engine::ConvexBody> bodies);

// Whether a point, in the scan's axes, lies inside of a scan that is closed. None is inside of one
// that is open, or that was seen from within.
bool is_inside(const Scan& scan, const engine::Vector& at);

// Whether the surface runs through a body, and does not only touch it.
bool is_crossed(const Scan& scan, std::span<const engine::ConvexBody> bodies);

}  // namespace model
