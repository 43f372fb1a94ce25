// Where the fasteners of one lap go: the side of the head, the pattern and its freedom.
#pragma once

#include "model/resolve/fastener_choice.h"
#include "model/resolve/hole_layout.h"
#include "model/resolve/lap.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/point_layout.h"

#include <span>
#include <vector>

namespace model {

// A lap with the two pieces and what stands about them, both among `near`.
struct LapSite {
    const Lap& lap;
    const Piece& upper;
    const Piece& lower;
    std::span<const Piece* const> near;
    const Piece* cover = nullptr;  // see Lap::cover
    // About fasteners beside it that lie along the same axis and move no more: no centre is within.
    std::span<const Box> settled{};
};

struct LapLayout {
    bool head_on_upper = true;
    bool long_nose = false;  // only the nose clears what stands beside it, not the tool behind it
    bool before_others = false;  // the tool clears the lap's own two pieces, but not others
    bool match_drilled = false;  // the piece on the head side is the pattern for the other
    Layout layout;
};

// How thick the two walls, the shim between them and the brace on them are together.
Nm stack_of(const LapSite& site);

class LapLayouts {
public:
    LapLayouts(const Shop& rules, const ResolvedShop& shop, const Slants& slants = {})
        : rules_{rules}, shop_{shop}, slants_{slants} {}

    // As many fasteners as fit, up to `wanted`. Of equal ways the one that can be set when all is
    // together (rivets may be set before other pieces are on), then the one that needs no nose
    // extension, then the one with the head on the upper piece, which lies outside, for looks.
    LapLayout best(const LapSite& site, const FastenerChoice& choice, Index wanted);

    // How many would fit on marks half as far apart.
    int count_on_half_marks(const LapSite& site, const FastenerChoice& choice, Index wanted);

private:
    LapLayout best_on(std::span<const Nm> steps,
                      const LapSite& site,
                      const FastenerChoice& choice,
                      Index wanted);
    // `way` says how it is set; gives it with the layout.
    LapLayout attempt(const LapSite& site,
                      const FastenerChoice& choice,
                      Index wanted,
                      const LapLayout& way,
                      std::span<const Nm> steps);
    Layout layout_in(const LapSite& site,
                     const Region& within,
                     const Marks& marks,
                     int wanted,
                     Nm apart,
                     Nm edge);
    void gather_obstacles(const LapSite& site,
                          const FastenerChoice& choice,
                          const Region& within,
                          const LapLayout& tried);

    const Shop& rules_;
    const ResolvedShop& shop_;
    Slants slants_;
    std::vector<Region> obstacles_;
    bool has_slices_ = false;  // among the obstacles
    std::vector<OutlineKeptClear> slanted_obstacles_;
};

}  // namespace model
