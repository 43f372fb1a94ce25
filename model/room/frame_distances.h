// How near frames come to each other, and where.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/room/room_things.h"

#include <array>
#include <vector>

namespace model {

struct FrameDistance {
    std::array<RoomThing, 2> things;     // of the frame that is stated first, then of the other
    std::array<engine::Vector, 2> at{};  // on them, mm in the room
    double distance = 0.0;               // mm, the least one; 0: they touch or share a place
};

// One for each two frames that come no further apart than `reach_mm`, in the order of the frames.
std::vector<FrameDistance> frame_distances(const Resolved& resolved,
                                           const Catalogue& catalogue,
                                           double reach_mm);

}  // namespace model
