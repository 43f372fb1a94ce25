// In which order the joints of a step are set. Only files of this folder use it.
#pragma once

#include "model/assembly/far_apart.h"
#include "model/assembly/frame_parts.h"

#include <algorithm>
#include <vector>

namespace model {

// Opposite corners first, so that what is set holds the rest square: common practice. `joints` are
// those of FrameParts.
inline std::vector<Index> in_turns(const FrameParts& parts, std::vector<Index> joints) {
    std::ranges::sort(joints);
    std::vector<Point> places;
    for (const Index j : joints) {
        const Box& lap = parts.resolved().joints[parts.joints()[j].joint].lap;
        places.push_back({(lap.lo[0] + lap.hi[0]) / 2, (lap.lo[1] + lap.hi[1]) / 2,
                          (lap.lo[2] + lap.hi[2]) / 2});
    }
    std::vector<Index> order;
    for (const std::size_t turn : turns_far_apart(places)) order.push_back(joints[turn]);
    return order;
}

}  // namespace model
