// The pieces about a lap that may be in the way of a head, a tail or the setting tool.
#pragma once

#include "engine/geometry/box_tree.h"
#include "model/resolve/lap.h"

#include <span>
#include <vector>

namespace model {

// Room for the tool and the hand behind it: common hand tools are 6 to 8 in long, from memory.
inline constexpr Nm tool_length = 6 * Length::nm_per_inch;

// Where anything may be in the way of a fastener of the lap or of the tool that sets it.
Box tool_reach(const Lap& lap, const ResolvedShop& shop);

class Surroundings {
public:
    // The pieces of a frame and a tree over their extents; both must outlive it.
    Surroundings(std::span<const Piece> pieces,
                 const engine::BoxTree& tree,
                 const ResolvedShop& shop)
        : pieces_{pieces}, tree_{tree}, shop_{shop} {}

    // The pieces that a tool on the lap can reach, the lap's two among them, in order. Valid until
    // the next call.
    std::span<const Piece* const> of(const Lap& lap);

private:
    std::span<const Piece> pieces_;
    const engine::BoxTree& tree_;
    const ResolvedShop& shop_;
    std::vector<Index> found_;
    std::vector<const Piece*> near_;
};

}  // namespace model
