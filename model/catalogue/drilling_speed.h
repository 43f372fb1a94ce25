// How fast a drill turns.
#pragma once

#include "engine/measure/length.h"

namespace model {

// Surface speeds are stated in feet or metres a minute.
double metres_from_feet(double feet);

// Turns a minute at which a drill's edge runs at the surface speed: V / (pi D), never more than the
// tool's top speed. The inch form is 3.82 V / D (a page of speeds for high-speed steel, read).
// `diameter` is more than zero.
double drill_rpm(double metres_per_minute, engine::Length diameter, double top_rpm);

}  // namespace model
