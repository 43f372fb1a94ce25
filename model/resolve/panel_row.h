// Where along a member the fasteners of a panel have room.
#pragma once

#include "model/resolve/fastener_choice.h"
#include "model/resolve/panel_place.h"
#include "model/resolve/spaced_row.h"

#include <vector>

namespace model {

// A wall that the sheet lies on.
struct PanelRest {
    Index piece = 0;
    std::uint8_t wall = 0;
    Region lap;             // what the two share, in the face's axes
    std::size_t along = 0;  // the face's axis along the member
};

struct PanelRow {
    std::vector<std::array<Nm, 2>> centres;  // in the face's axes
    Nm gap = 0;  // the greatest between two, and from an end of the contact
    bool long_nose = false;
};

// The best row for one fastener; empty where there is no room.
PanelRow panel_row(const Catalogue& catalogue,
                   const Shop& rules,
                   const Resolved& resolved,
                   const PlacedPanel& panel,
                   Index number,
                   const PanelRest& rest,
                   const FastenerChoice& choice);

}  // namespace model
