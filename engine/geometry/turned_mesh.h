// Turned parts as triangles: a profile taken once round an axis.
#pragma once

#include "engine/geometry/mesh.h"
#include "engine/geometry/mesh_writer.h"
#include "engine/geometry/placement.h"

#include <cstddef>
#include <span>

namespace engine {

struct TurnedPoint {
    double radius = 0.0;    // mm from the axis; 0 only at the first and the last point
    double z = 0.0;         // mm along the axis
    bool is_crisp = false;  // a rim to be seen as a line; else the part runs on smoothly
};

// How many flats stand for the roundness.
enum class Roundness : std::size_t { coarse = 12, fine = 24 };

// The most that a profile of so many points appends.
MeshCounts turned_counts(std::size_t profile_points, Roundness roundness = Roundness::fine);

// Appends a closed solid around the z axis of its own axes. The profile runs from the axis to the
// axis with the metal on its left: for a pin from the lower end to the upper one. Appends nothing
// for a profile that does not begin and end on the axis or has fewer than three points.
void append_turned(Mesh& mesh,
                   std::span<const TurnedPoint> profile,
                   const Placement& place,
                   Roundness roundness = Roundness::fine);

}  // namespace engine
