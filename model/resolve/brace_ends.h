// How the two ends of a brace are cut: to the outer edge of the members at its nodes, or square.
#pragma once

#include "model/resolve/brace_line.h"

#include <array>
#include <optional>
#include <vector>

namespace model {

// The edge beyond which an end must not reach, by axis of the face: inward from the node, towards
// the other one; below 0 where the edge lies beyond the node. None: nothing bounds it that way.
using EndLimits = std::array<std::optional<Nm>, 2>;

// The shape of a brace before it has a place.
struct BraceCut {
    Nm from_node = 0;  // from the first node to the datum end, along the run; may be below 0
    Nm length = 0;
    Corners corners;  // counter-clockwise, as in Outline
};

// Of a brace that runs through both nodes in the middle of its width. With square ends its length
// is a whole number of `graduation`s. None where nothing is left, or where the two cuts cross.
std::optional<BraceCut> brace_cut(const BraceLine& line,
                                  const std::array<EndLimits, 2>& limits,
                                  Nm graduation);

// Along the axes of the face, both above 0: how far the brace goes for each length of its run.
std::array<double, 2> slope_of(const BraceLine& line);

}  // namespace model
