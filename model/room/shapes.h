// What the shapes of obstacles share; only files of this folder use it.
#pragma once

#include "engine/geometry/convex.h"
#include "model/room/obstacle_shape.h"

namespace model {

constexpr double mm_of(Nm length) { return static_cast<double>(length) / 1e6; }

SolidObstacle solid_of(const WheelWell& well, const NamedValues& values);
SolidObstacle solid_of(const WallProfile& wall, const NamedValues& values);
SolidObstacle solid_of(const CeilingProfile& ceiling, const NamedValues& values);

}  // namespace model
