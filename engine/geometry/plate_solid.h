// Exact solids of plates: an outline of any shape with cut-outs, edges square or bevelled, round
// holes through it.
#pragma once

#include "engine/geometry/face_room.h"
#include "engine/geometry/solid.h"

#include <array>
#include <span>
#include <vector>

namespace engine {

// Closed loops of straight edges, mm: the outline counter-clockwise, then cut-outs clockwise, none
// crossing or touching itself or another.
using PlateLoops = std::vector<std::vector<FacePoint>>;

struct PlateShape {
    const PlateLoops& near;           // at z = 0
    const PlateLoops* far = nullptr;  // at z = thickness, corner for corner; null: as near
    double thickness = 0.0;
    std::span<const RoundHole> holes;  // at right angles
};

// From z = 0 to the thickness in its own axes. A hole that does not lie wholly within both faces or
// comes into another hole is left out. False, and an empty solid, where the loops break the rules
// above as far as areas and counts of corners tell.
bool make_plate(Solid& solid, const PlateShape& shape);

// A box from the origin.
bool make_box(Solid& solid, const std::array<double, 3>& size);

// Whether no two edges cross or touch but at their common corner. Takes time with the square of the
// number of edges.
bool is_simple(const PlateLoops& loops);

}  // namespace engine
