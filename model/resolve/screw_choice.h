// Which machine screw a lap gets, in which length, and how the holes in its plates are made.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/fastener_choice.h"

namespace model {

// What the joint and the shop ask for: a rivet or a screw. An empty id: by the plates' thickness.
struct FastenerWish {
    bool is_screw = false;
    std::string id;
    ScrewHold hold = ScrewHold::tapped;  // of a screw

    bool operator==(const FastenerWish&) const = default;
};

// The joint's own screw, else, where it comes apart, the shop's; a joint that stays together has
// the rivet or the screw that the shop fastens with.
FastenerWish wish_of(const Catalogue& catalogue, const Shop& shop, const JointOverride* own);

// The plates of a lap, as far as the choice hangs on them.
struct StackSizes {
    Nm total = 0;
    Nm thinnest = 0;  // of the two walls
    Nm far = 0;       // the wall that is tapped, or has the nut

    bool operator==(const StackSizes&) const = default;
};

FastenerAnswer choose_screw(const Catalogue& catalogue,
                            const Shop& shop,
                            const FastenerWish& wish,
                            MeasureSystem system,
                            const StackSizes& sizes);

}  // namespace model
