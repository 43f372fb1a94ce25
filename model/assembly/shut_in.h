// What is meant to come apart and cannot be put on last of all. Only files of this folder use it.
#pragma once

#include "model/assembly/part_ways.h"
#include "model/assembly/take_apart.h"
#include "model/assembly/tool_access.h"

#include <optional>
#include <vector>

namespace model {

struct ShutIn {
    std::vector<Index> pieces;  // of FrameParts, that have no way out
    std::vector<Index> joints;  // of FrameParts, whose screws no driver reaches
    std::vector<Index> by;      // pieces that are not meant to come off and must for it
};

class ShuttingIn {
public:
    // All must outlive it.
    ShuttingIn(const FrameParts& parts,
               const PartWays& ways,
               const ToolAccess& access,
               const TakenApart& taken);

    // Of the part, before which `present` stands: of the ways by which it comes the one with the
    // fewest pieces in it once the frame is whole. None where one is free but for what comes off.
    std::optional<ShutIn> part(const Part& part, const PieceSet& present) const;

    // Of the joint's screws, in the whole frame. None where a driver reaches them.
    std::optional<ShutIn> joint(Index joint) const;

private:
    void note_loose(const std::vector<Put>& puts);

    const FrameParts& parts_;
    const PartWays& ways_;
    const ToolAccess& access_;
    PieceSet loose_;  // what comes off by itself: held by screws alone, or by nothing
};

}  // namespace model
