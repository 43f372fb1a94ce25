// What is in the way of the fasteners of one lap: pieces, shims that are no pieces yet, and
// fasteners that move no more.
#pragma once

#include "model/resolve/fastener_choice.h"
#include "model/resolve/hole_layout.h"
#include "model/resolve/surroundings.h"

#include <span>
#include <vector>

namespace model {

// What one that moves no more fills, as a piece of one wall across its axis, and what those beside
// it must keep out of.
struct SettledFastener {
    Piece body;
    Box apart;
};

class NearLap {
public:
    // The pieces of a frame and a tree over their extents; all must outlive it.
    NearLap(std::span<const Piece> pieces, const engine::BoxTree& tree, const ResolvedShop& shop)
        : pieces_{pieces}, shop_{shop}, surroundings_{pieces, tree, shop} {}

    // A shim that is going to lie under a brace: in everything's way but its own fasteners'.
    void expect_shim_under_brace(const Lap& lap);

    // A shim between members: in the way of a brace's fasteners.
    void add_shim(const Lap& lap);

    // The fasteners of a lap whose places are settled are in the way of those of a brace.
    void note_settled(const Lap& lap,
                      const FastenerChoice& fastener,
                      bool head_on_upper,
                      const Layout& layout);

    // The lap's own two among them. Valid until the next call.
    std::span<const Piece* const> pieces(const Lap& lap);

    // For the same lap: round fasteners along its normal, of their pitch on both sides.
    std::span<const Box> settled_beside() const { return settled_beside_; }

private:
    std::span<const Piece> pieces_;
    const ResolvedShop& shop_;
    Surroundings surroundings_;
    std::vector<Piece> shims_;
    std::vector<Piece> brace_shims_;
    std::vector<SettledFastener> settled_;
    std::vector<const Piece*> near_brace_;
    std::vector<Box> settled_beside_;
};

}  // namespace model
