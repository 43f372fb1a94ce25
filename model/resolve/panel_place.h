// Where a panel lies and what its sheet looks like: cut to the frame, clear of all that stands in
// its way.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/panel_face.h"
#include "model/resolve/sheet_region.h"
#include "model/resolve/values.h"

#include <optional>
#include <span>
#include <vector>

namespace model {

// A hole through the sheet for the head or the tail of a fastener that is there already.
struct ClearHole {
    Index fastener = 0;  // in Resolved
    std::array<Nm, 2> at{};
    Nm diameter = 0;
    Index drill = no_index;
};

struct PlacedPanel {
    Index stated = 0;  // in Frame::panels
    PanelFace face;
    Nm from = 0;  // beyond the face's plane: the side of the sheet that looks into the bay
    Nm to = 0;
    bool rests_inside = false;  // on the inner sides of the legs on that face, not on outer sides
    SheetShape sheet;
    std::vector<ClearHole> clear_holes;
    Region opening;  // of a door or a drawer front: what is free between the members
    Nm pitch = 0;
};

Box box_of(const PlacedPanel& panel);

// Whether the sheet lies on that wall, face to face.
bool touches(const PlacedPanel& panel, const Piece& piece, const Plate& plate);

// The panels of one frame, one after the other: what is placed stands in the way of what follows.
// `number` is that of the frame; its fasteners are in `resolved` already. Faults become findings.
std::vector<PlacedPanel> place_panels(const Project& project,
                                      const Catalogue& catalogue,
                                      Values& values,
                                      Index number,
                                      Resolved& resolved);

}  // namespace model
