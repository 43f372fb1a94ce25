// Joints that are made alike: the same sections, recipe, fasteners, stack and distances.
#pragma once

#include "engine/geometry/placement.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace model {

struct CornerKind {
    std::vector<Index> joints;  // of which the first is drawn
    std::string title;          // "angle 1 x 1 x 1/8 on angle 1 x 1 x 1/8"
    std::vector<std::string> words;
};

// Joints with fasteners, in kinds: the most frequent first.
std::vector<CornerKind> corner_kinds(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved);

// One of the two pieces of a joint, and its wall that lies on the other one.
struct CornerSide {
    Index piece = 0;
    std::uint8_t wall = 0;
};

// Both, the one on the side of the fasteners' head first: that is called the outer one.
std::array<CornerSide, 2> corner_sides(const Resolved& resolved, Index joint);

// The plane of the section that shows a joint: through the axis of one of its fasteners, across the
// run of the piece that lies outside.
struct CornerCut {
    Index fastener = 0;      // in Resolved::fasteners: the nearest to an edge, else the first
    std::size_t away = 0;    // axis of the frame across which it cuts
    std::size_t across = 0;  // the one that lies level on the sheet
    std::size_t drive = 0;   // along the fastener
    engine::Vector at{};     // under the head of the fastener, mm in the frame
};
CornerCut corner_cut(const Resolved& resolved, Index joint);

// To the nearer edge of the joint's two walls, in order of `corner_sides`; none where that edge is
// far away, or the wall is cut otherwise than square.
using EdgeDistances = std::array<std::optional<engine::Length>, 2>;

// From the axis of the fastener that is cut through, in the plane of the section.
EdgeDistances edge_distances_drawn(const Resolved& resolved, Index joint);

// The least over all fasteners of the joint, for each wall: to its sides and to the piece's ends.
EdgeDistances least_edge_distances(const Resolved& resolved, Index joint);

}  // namespace model
