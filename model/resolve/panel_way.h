// What stands in the way of a sheet: pieces, and the heads and tails of fasteners.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/panel_face.h"

#include <span>
#include <vector>

namespace model {

// The stretch that a sheet fills beyond the plane of its face.
struct SheetDepth {
    Nm from = 0;
    Nm to = 0;
};

// For each piece that enters the stretch over the region, the least rectangle about all walls of it
// that do, grown by the gap.
std::vector<Region> pieces_in_way(std::span<const Piece> pieces,
                                  const PanelFace& face,
                                  const SheetDepth& depth,
                                  const Region& over,
                                  Nm gap);

// A head or a tail that the sheet would run into.
struct FastenerInWay {
    Index fastener = 0;  // in Resolved
    bool is_square_to_sheet = false;
    std::array<Nm, 2> at{};  // of its axis, where it is square to the sheet
    Nm radius = 0;
    Region seen;  // all of it
};

std::vector<FastenerInWay> fasteners_in_way(const Catalogue& catalogue,
                                            const Resolved& resolved,
                                            Index frame,
                                            const PanelFace& face,
                                            const SheetDepth& depth,
                                            const Region& over);

// The ways to the screws that fix feet to the van: a driver stands in each when all is together.
std::vector<Box> ways_to_feet(const Resolved& resolved, Index frame);

// Those of them that the sheet would close.
std::vector<Region> feet_in_way(const Resolved& resolved,
                                Index frame,
                                const PanelFace& face,
                                const SheetDepth& depth,
                                const Region& over);

}  // namespace model
