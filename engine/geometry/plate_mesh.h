// Plates as triangles: an outline of any shape, a thickness, round holes through it.
#pragma once

#include "engine/geometry/extrusion.h"
#include "engine/geometry/face_room.h"
#include "engine/geometry/face_triangles.h"
#include "engine/geometry/mesh.h"
#include "engine/geometry/placement.h"

#include <cstddef>
#include <span>

namespace engine {

using PlateHole = RoundHole;

// Appends a closed plate from z = 0 to `thickness` in its own axes. The outline (mm) may run either
// way round but must not cross or touch itself; points that repeat are passed over. A hole that
// does not lie wholly within the outline or comes into another hole is left out. Gives the number
// of holes drawn. Appends nothing for an outline that encloses nothing or crosses itself.
std::size_t append_plate(Mesh& mesh,
                         std::span<const FacePoint> outline,
                         double thickness,
                         std::span<const PlateHole> holes,
                         const Placement& place,
                         ExtrusionMesher& mesher);

}  // namespace engine
