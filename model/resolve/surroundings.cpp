#include "model/resolve/surroundings.h"

#include <algorithm>

namespace model {

Box tool_reach(const Lap& lap, const ResolvedShop& shop) {
    // No head or tail is wider than an inch; the tool's own radii may be.
    const Nm aside = std::max({Length::nm_per_inch / 2, shop.housing_radius, shop.nose_radius});
    Box reach = lap.rect;
    for (std::size_t k = 0; k < 3; ++k) {
        const Nm by = k == lap.normal_axis ? tool_length : aside;
        reach.lo[k] -= by;
        reach.hi[k] += by;
    }
    return reach;
}

std::span<const Piece* const> Surroundings::of(const Lap& lap) {
    const Box reach = tool_reach(lap, shop_);
    found_.clear();
    tree_.for_each_touching(reach, [&](Index piece) { found_.push_back(piece); });
    std::sort(found_.begin(), found_.end());
    near_.clear();
    for (const Index piece : found_) near_.push_back(&pieces_[piece]);
    return near_;
}

}  // namespace model
