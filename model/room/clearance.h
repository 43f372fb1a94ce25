// How near pieces, with the heads and tails of their fasteners, come to the room's obstacles and to
// other frames.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"
#include "model/room/room_things.h"
#include "model/room/scans.h"

#include <array>
#include <memory>
#include <span>
#include <vector>

namespace model {

// One thing too near to an obstacle, or in it.
struct NearPlace {
    RoomThing thing;
    Index obstacle = 0;     // in Project::room
    double distance = 0.0;  // mm, the least one; 0: they touch or share a place
    // mm: it would be free if moved so far along `way_out`. The worst of a frame is told with the
    // least that it takes.
    double depth = 0.0;
    engine::Vector way_out{};   // unit, along an axis of the room
    engine::Vector on_thing{};  // where, mm in the room
    engine::Vector on_obstacle{};
};

// An obstacle as clearances are measured from it.
struct RoomObstacle {
    Index obstacle = 0;
    Nm wanted = 0;  // clearance
    bool stays_clear = false;
    std::vector<engine::ConvexBody> bodies;
    engine::Bounds bounds;  // of the bodies
    std::shared_ptr<const Scan> scan;
    engine::Placement scan_place;                                  // of the scan's axes in the room
    std::array<bool, 6> ways{true, true, true, true, true, true};  // out of it: -X, +X, -Y, ...
};

// Obstacles with a shape; what has none is told in `findings`: `bad_obstacle`, and `scan_not_read`
// for a scan that the library lacks.
std::vector<RoomObstacle> room_obstacles(const Project& project,
                                         const Resolved& resolved,
                                         const ScanLibrary& scans,
                                         std::vector<Finding>& findings);

struct LookRound {
    double reach = 0.0;         // mm further than what is wanted
    bool boxes_beyond = false;  // there boxes tell how near it is: no more than it is, and no place
    bool with_depth = true;  // otherwise boxes tell how deep a thing is inside: no less than it is
};

// All that is nearer than wanted, by obstacle, then as in room_things.
std::vector<NearPlace> near_places(const Resolved& resolved,
                                   const Catalogue& catalogue,
                                   std::span<const RoomObstacle> obstacles,
                                   const LookRound& how = {});

// Things of two frames that come nearer to each other than the shop's frame gap, and heads and
// tails of one that stand in a piece of another: `frame_gap`, a warning, and `fastener_enters`, an
// error. Pieces that enter each other have a finding of resolve.
void report_frame_gaps(const Project& project,
                       const Catalogue& catalogue,
                       const Resolved& resolved,
                       std::vector<Finding>& findings);

// Drawers that cannot come all the way out, as far as their bay is deep, on the side where they
// have their front: `drawer_blocked`, an error that says how far it comes. Of the room, but what
// only stays clear, and of other frames; what of its own frame is in the way is not looked at. What
// cannot be open together with it is a warning: `drawer_meets_door`, `drawer_meets_drawer`.
void report_drawer_ways(const Project& project,
                        const Catalogue& catalogue,
                        const Resolved& resolved,
                        std::span<const RoomObstacle> obstacles,
                        std::vector<Finding>& findings);

// One finding for each frame and obstacle that it comes too near to: `inside_obstacle` and
// `in_the_way` (of what stays clear) are errors with the depth, `clearance` is a warning with the
// distance; the worst place in its numbers.
void report_near_places(const Project& project,
                        const Resolved& resolved,
                        std::span<const RoomObstacle> obstacles,
                        std::span<const NearPlace> places,
                        std::vector<Finding>& findings);

// All of these.
std::vector<Finding> room_findings(const Project& project,
                                   const Catalogue& catalogue,
                                   const Resolved& resolved,
                                   const ScanLibrary& scans);

}  // namespace model
