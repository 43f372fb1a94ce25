// Where the fasteners of a row go: first and last as far out as may be, evenly between, on marks.
#pragma once

#include "model/resolve/resolved.h"

#include <array>
#include <vector>

namespace model {

// All along one line. Marks are phase + k * step.
struct RowRoom {
    Nm least = 0;  // of the centres
    Nm most = 0;
    Nm step = 1;
    Nm phase = 0;
    Nm apart = 1;                            // least distance of two centres
    Nm pitch = 1;                            // greatest distance of two centres, where it can be
    std::vector<std::array<Nm, 2>> blocked;  // no centre lies between these two
};

// Rising; empty where there is no room. Where what is blocked is longer than the pitch, two centres
// are further apart.
std::vector<Nm> spaced_row(RowRoom room);

// The greatest distance of two neighbours; 0 for fewer than two.
Nm greatest_gap(const std::vector<Nm>& centres);

}  // namespace model
