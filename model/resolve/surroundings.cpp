#include "model/resolve/surroundings.h"

#include <algorithm>

namespace model {

std::span<const Piece* const> Surroundings::of(const Lap& lap) {
    // No head or tail is wider than an inch; the tool's own radii may be.
    const Nm aside = std::max({Length::nm_per_inch / 2, shop_.housing_radius, shop_.nose_radius});
    Box reach = lap.rect;
    for (std::size_t k = 0; k < 3; ++k) {
        const Nm by = k == lap.normal_axis ? tool_length : aside;
        reach.lo[k] -= by;
        reach.hi[k] += by;
    }
    found_.clear();
    tree_.for_each_touching(reach, [&](Index piece) { found_.push_back(piece); });
    std::sort(found_.begin(), found_.end());
    near_.clear();
    for (const Index piece : found_) near_.push_back(&pieces_[piece]);
    return near_;
}

}  // namespace model
