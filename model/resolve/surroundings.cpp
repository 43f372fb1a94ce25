#include "model/resolve/surroundings.h"

#include <algorithm>

namespace model {

std::span<const Piece* const> Surroundings::of(const Lap& lap) {
    bars_.clear();
    for (const Index piece : {lap.upper, lap.lower}) {
        const Index bar = s_.bar_of[piece];
        const Neighbours around = s_.around[bar];
        bars_.push_back(bar);
        for (Index k = 0; k < around.count; ++k) bars_.push_back(s_.near[around.first + k]);
    }
    std::sort(bars_.begin(), bars_.end());
    bars_.erase(std::unique(bars_.begin(), bars_.end()), bars_.end());

    Box reach = lap.rect;
    for (std::size_t k = 0; k < 3; ++k) {
        const Nm by = k == lap.normal_axis ? tool_length : shop_.housing_radius + tool_length / 6;
        reach.lo[k] -= by;
        reach.hi[k] += by;
    }
    pieces_.clear();
    for (const Index bar : bars_) {
        const Bar& b = s_.bars[bar];
        for (Index p = b.first_piece; p < b.first_piece + b.piece_count; ++p) {
            if (engine::touches(s_.pieces[p].extents, reach)) pieces_.push_back(&s_.pieces[p]);
        }
    }
    return pieces_;
}

}  // namespace model
