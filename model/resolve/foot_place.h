// Where a foot fits at a member's end.
#pragma once

#include "model/resolve/foot.h"

#include <optional>
#include <span>
#include <vector>

namespace model {

// One end of a piece of bar at which a foot is asked for.
struct FootSite {
    Index piece = 0;
    std::size_t run = 0;  // axis of the piece
    int into = 1;         // sense along it from the end into the piece
    Nm end = 0;
};

// The screw or bolt that fixes a foot, and what it wants.
struct FootScrew {
    Index drill = no_index;
    Nm hole = 0;           // diameter
    Nm edge = 0;           // least distance of the hole's middle from an edge
    Nm driver_radius = 0;  // clear about it, above the foot
    Nm head_radius = 0;
};

struct FootPlace {
    Piece foot;
    std::size_t on_member = 0;  // walls of the foot
    std::size_t on_ground = 0;
    Plate member_wall;
    bool is_outside = false;  // the foot lies on the wall's outer face
    FixingHole hole;
    double worth = 0.0;
};

// What else a foot must know of its frame.
struct FootRoom {
    std::span<const Box> bays;     // empty: none is stated
    Box hull;                      // of all pieces
    std::span<const Box> setting;  // about laps: what the setting of their fasteners wants
    std::span<const Box> set;      // and what heads and tails take up
    std::span<const Box> walls;    // of the room, as far as they are known
};

// Whether the end lies in an outer plane: nothing of the frame and no bay beyond it.
bool is_at_outside(const PartMaker& maker, const FootSite& site, const FootRoom& room);

// The best place for a foot of that angle. It holds fasteners on the member, all those of a lap
// rather than fewer, keeps
// the hole's edge distance, and leaves a driver 6 in long room above the hole. Inside the frame,
// where it takes no room from what stands beside it, counts twice as much as outside of it.
std::optional<FootPlace> foot_place(PartMaker& maker,
                                    const FootSite& site,
                                    const StockShape& angle,
                                    const FootScrew& screw,
                                    const FootRoom& room);

}  // namespace model
