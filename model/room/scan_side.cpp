#include "model/room/scan_side.h"

#include "engine/geometry/vectors.h"
#include "model/room/rounding.h"
#include "model/room/way_out.h"

#include <algorithm>

namespace model {

std::vector<engine::ConvexBody> in_axes_of(const engine::Placement& scan_place,
                                           std::span<const engine::ConvexBody> bodies) {
    const engine::Placement own{
        .origin = engine::scaled(own_direction(scan_place, scan_place.origin), -1.0),
        .x = own_direction(scan_place, {1.0, 0.0, 0.0}),
        .y = own_direction(scan_place, {0.0, 1.0, 0.0}),
        .z = own_direction(scan_place, {0.0, 0.0, 1.0})};
    std::vector<engine::ConvexBody> all;
    all.reserve(bodies.size());
    for (const auto& body : bodies) all.push_back(engine::moved(body, own));
    return all;
}

bool is_inside(const Scan& scan, const engine::Vector& at) {
    if (!scan.is_closed || scan.is_hollow) return false;
    const engine::Vector direction{0.36, 0.48, 0.8};  // along no axis, to meet no edge by habit
    engine::Vector from = at;
    bool inside = false;
    while (const auto hit = scan.tree.first_on_ray(from, direction)) {
        inside = !inside;
        from = engine::plus(hit->point, engine::scaled(direction, rounding_mm));
    }
    return inside;
}

bool is_crossed(const Scan& scan, std::span<const engine::ConvexBody> bodies) {
    constexpr double hair = 1e-6;  // of its size
    return std::ranges::any_of(
        bodies, [&](const auto& body) { return scan.tree.crosses(engine::shrunk(body, hair)); });
}

}  // namespace model
