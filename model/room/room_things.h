// What the pieces of all frames fill in the room, as convex bodies.
#pragma once

#include "engine/geometry/bounds.h"
#include "engine/geometry/convex_body.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <vector>

namespace model {

// A piece, or what of a set fastener stands out from it: the head on its first plate, the tail, nut
// or rivet nut on its last one.
struct RoomThing {
    Index piece = 0;
    Index fastener = no_index;
    bool is_tail = false;
    engine::Bounds bounds;  // in the room, mm
};

// All pieces, then heads and tails. Fasteners that are not in the catalogue are passed over.
std::vector<RoomThing> room_things(const Resolved& resolved, const Catalogue& catalogue);

// Makes the bodies of one thing after the other. Walls are whole, without their holes; parts of
// sheet are what their outline leaves of them. Heads and tails are prisms that hold them.
class ThingBodies {
public:
    ThingBodies(const Resolved& resolved, const Catalogue& catalogue)
        : resolved_{resolved}, catalogue_{catalogue} {}

    // In the room, mm; none for a piece without plates.
    std::vector<engine::ConvexBody> of(const RoomThing& thing) const;

private:
    const Resolved& resolved_;
    const Catalogue& catalogue_;
};

}  // namespace model
