// How near each frame comes to each obstacle of the room and to the other frames.
#pragma once

#include "editor/derived.h"
#include "editor/measured_line.h"
#include "editor/room_facts.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

struct RoomRow {
    std::string frame;
    std::string other;                 // an obstacle or another frame
    bool is_frame = false;             // the other is a frame
    bool is_known = true;              // the other has a shape
    std::optional<double> clear;       // mm, the least; none: further than was looked for
    double depth = 0.0;                // mm that it stands inside
    double wanted = 0.0;               // mm
    double reach = 0.0;                // mm from it within which was looked
    std::vector<model::Index> pieces;  // that come nearest
    engine::Vector from{};             // where, mm in the room
    engine::Vector to{};

    bool is_too_near() const { return depth > 0.0 || (clear && *clear < wanted - 1e-6); }
};

// By frame, then the obstacles, then the frames that are stated after it.
std::vector<RoomRow> room_rows(const Derived& derived,
                               const RoomFacts& facts,
                               const model::Catalogue& catalogue);

// "3/8", "1/2 inside", "touches", "over 12 1/4", "not read".
std::string clearance_words(const RoomRow& row, const engine::TapeStyle& shown);

MeasuredLine line_of(const RoomRow& row, const engine::TapeStyle& shown);

}  // namespace editor
