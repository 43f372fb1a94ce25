// What keeps the tool off the fasteners of a joint. Only files of this folder use it.
#pragma once

#include "model/assembly/part_ways.h"

#include <vector>

namespace model {

// By joint of the frame. The room that a tool needs is that of lap_layout: about the axis, on the
// head's side, as wide as nose, housing or driver and as long as `tool_length`.
struct ToolAccess {
    struct OfJoint {
        PieceSet in_way;          // of the tool as it is
        PieceSet in_way_of_nose;  // where a long nose keeps the housing clear of the joint
        bool needs_nose = false;  // the joint's own pieces leave no room for the housing
    };
    std::vector<OfJoint> joints;
};

ToolAccess tool_access(const FrameParts& parts, const PartWays& ways);

}  // namespace model
