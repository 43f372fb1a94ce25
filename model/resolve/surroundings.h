// The pieces about a lap that may be in the way of a head, a tail or the setting tool.
#pragma once

#include "model/resolve/lap.h"
#include "model/resolve/skeleton.h"

#include <span>
#include <vector>

namespace model {

// Room for the tool and the hand behind it: common hand tools are 6 to 8 in long, from memory.
inline constexpr Nm tool_length = 6 * Length::nm_per_inch;

class Surroundings {
public:
    Surroundings(const FrameSkeleton& skeleton, const ResolvedShop& shop)
        : s_{skeleton}, shop_{shop} {}

    // The pieces of the bars about both of the lap's, these among them, that a tool on the lap can
    // reach. Valid until the next call.
    std::span<const Piece* const> of(const Lap& lap);

private:
    const FrameSkeleton& s_;
    const ResolvedShop& shop_;
    std::vector<Index> bars_;
    std::vector<const Piece*> pieces_;
};

}  // namespace model
