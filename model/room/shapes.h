// What the shapes of obstacles share; only files of this folder use it.
#pragma once

#include "engine/geometry/convex.h"
#include "model/room/obstacle_shape.h"

#include <string>

namespace model {

// What is stated as less than a thousandth of a millimetre is no measure of a solid.
inline constexpr Nm least_measure = 1000;

constexpr double mm_of(Nm length) { return static_cast<double>(length) / 1e6; }

// Why two corners hold no box, as the end of a sentence; else empty.
std::string fault_between(const Point& least, const Point& most);

SolidObstacle solid_of(const WheelWell& well, const NamedValues& values);
SolidObstacle solid_of(const WallProfile& wall, const NamedValues& values);
SolidObstacle solid_of(const CeilingProfile& ceiling, const NamedValues& values);

}  // namespace model
