// A plate's own axes: u along the piece, v across the wall, n into the metal.
#pragma once

#include "model/resolve/resolved.h"

#include <array>

namespace model {

// In the frame's axes. All coordinates of u, v, n are 0 but one, which is 1 or -1.
struct PlateAxes {
    Point origin{};  // on the outer face, datum end, heel
    std::array<int, 3> u{};
    std::array<int, 3> v{};
    std::array<int, 3> n{};
    std::array<Nm, 2> lo{};  // of the outline: u, v
    std::array<Nm, 2> hi{};
    Nm thickness = 0;
};

PlateAxes plate_axes(const Piece& piece, const Plate& plate);

}  // namespace model
