// Pieces as exact solids: for their volume, for exchange files, and for meshes of what is more than
// a bar with square ends.
#pragma once

#include "engine/geometry/placement.h"
#include "engine/geometry/solid.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <memory>

namespace model {

// The solid in its own axes and where they lie in the room, mm; the axes may be left-handed.
struct PieceSolid {
    engine::Solid solid;
    engine::Placement place;
};

// A piece of one wall that has an outline is that outline; any other piece of bar is its section,
// with true fillets and roundings, between its two ends. A hole that runs into another wall, a
// rounded corner, an end or another hole is left out.
class PieceSolids {
public:
    PieceSolids(const Resolved& resolved, const Catalogue& catalogue);  // both must outlive it
    ~PieceSolids();
    PieceSolids(const PieceSolids&) = delete;
    PieceSolids& operator=(const PieceSolids&) = delete;

    // False, and an empty solid, for an outline that crosses or touches itself, ends that leave no
    // length, or a piece without plates.
    bool make(PieceSolid& made, Index piece);

private:
    struct Work;
    std::unique_ptr<Work> work_;
};

// Volume in mm3 of a piece with its holes; 0 where it makes no solid.
double piece_volume(const Resolved& resolved, const Catalogue& catalogue, Index piece);

}  // namespace model
