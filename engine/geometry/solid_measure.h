// Volume and surface of a solid by closed formulas, with true circles.
#pragma once

#include "engine/geometry/solid.h"

namespace engine {

struct SolidMeasure {
    double volume = 0.0;   // mm3
    double surface = 0.0;  // mm2
};

// By the divergence theorem: three times the volume is the integral over the surface of the place
// times the outward normal; over a flat face and over a part of a cylinder that is an integral
// along its loops in closed form. A flat face whose four corners lie in no plane to the last digit
// counts as the surface that its straight edges span.
SolidMeasure measure_of(const Solid& solid);

}  // namespace engine
