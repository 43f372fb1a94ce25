// The shop's rules of layout, kept within what is sensible whatever it says.
#pragma once

#include "engine/geometry/box.h"
#include "model/project/project.h"
#include "model/project/shop_limits.h"

#include <algorithm>
#include <cmath>

namespace model {

inline double ratio_within(double ratio, double least, double most) {
    return std::isfinite(ratio) ? std::clamp(ratio, least, most) : least;
}

// In fastener diameters.
inline double edge_ratio(const Shop& shop) {
    return ratio_within(shop.edge_distance, least_edge_distance, most_edge_distance);
}
inline double pitch_ratio(const Shop& shop) {
    return ratio_within(shop.pitch, least_pitch, most_pitch);
}

// In nm, as the diameter is.
inline engine::Nm edge_distance(const Shop& shop, engine::Nm diameter) {
    return std::llround(edge_ratio(shop) * static_cast<double>(diameter));
}
inline engine::Nm pitch(const Shop& shop, engine::Nm diameter) {
    return std::llround(pitch_ratio(shop) * static_cast<double>(diameter));
}

}  // namespace model
