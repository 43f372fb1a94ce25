// What proves with a tape that a frame is square: the diagonals of its rectangular faces.
#pragma once

#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <array>
#include <string>
#include <vector>

namespace model {

// One rectangle of a frame's outside, between layout planes, and so over the outside corners. Both
// its diagonals are to measure the same.
struct SquareRow {
    Index frame = 0;
    std::string face;                                   // the plane it lies in
    std::array<std::array<std::string, 2>, 2> between;  // planes across its two axes, in axis order
    std::array<engine::Length, 2> size;                 // along them
    engine::Length diagonal;                            // to the nearest nanometre
    // Of bars that an assembly step closes: not over the outside of the face, but from heel to
    // heel.
    bool is_heel_to_heel = false;

    bool operator==(const SquareRow&) const = default;
};

// By frame and plane; of a frame without bays the box round all its planes. Where bays make an
// outline that is no rectangle, each rectangle that they make up by themselves has a row. Only
// those at whose four corners bars end or meet, so that a tape finds them: not those with a leaning
// edge, nor such that are so narrow that their diagonals tell nothing.
std::vector<SquareRow> square_rows(const Project& project, const Resolved& resolved);

// Whether a tape tells by the diagonals of a rectangle of that size that it is square.
bool do_diagonals_tell(const std::array<Nm, 2>& size);

std::string square_csv(const Project& project, const std::vector<SquareRow>& rows);

}  // namespace model
