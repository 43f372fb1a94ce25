// A frame taken apart step by step; read backwards that is how it is put together. Only files of
// this folder use it.
//
// A part comes off along a straight way when nothing that stays lies in that way. Two pieces stay
// together as long as something is still on that keeps the tool off the fasteners between them:
// backwards, these are set before it is put on. Taking parts away only ever opens more ways, so
// whatever comes off may come off first, and where nothing does, no order works at all.
#pragma once

#include "model/assembly/part.h"
#include "model/assembly/part_ways.h"
#include "model/assembly/tool_access.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace model {

struct JointNotReached {
    Index joint = 0;            // of FrameParts
    std::vector<Index> in_way;  // pieces that cannot but be on when it is set
};

struct PieceWithoutWay {
    Index piece = 0;
    std::vector<Index> in_way;  // along the way that has the least in it
};

// How a joint is set where its tool has no room: see ToolAccess.
enum class SetWith : std::uint8_t { tool, long_nose, nothing };

struct TakenApart {
    std::vector<Put> puts;              // in the order in which the frame is put together
    PartKind kind = PartKind::several;  // flat: the whole of it lies in one plane
    std::string face;
    std::vector<JointNotReached> not_reached;
    std::vector<PieceWithoutWay> without_way;
    std::vector<SetWith> set_with;   // by joint; nothing: one of not_reached
    std::size_t parts_given_up = 0;  // flat parts that could not be made as wholes
};

TakenApart taken_apart(const FrameParts& parts,
                       const PartWays& ways,
                       const ToolAccess& access,
                       std::vector<Part> whole);

}  // namespace model
