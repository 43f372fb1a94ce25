#include "model/resolve/bay_box.h"

namespace model {

std::optional<Nm> plane_position(const Frame& frame,
                                 const ResolvedFrame& placed,
                                 std::string_view plane,
                                 Axis axis) {
    for (std::size_t i = 0; i < frame.planes.size() && i < placed.planes.size(); ++i) {
        if (frame.planes[i].name != plane) continue;
        return placed.planes[i].axis == axis ? placed.planes[i].position : std::nullopt;
    }
    return std::nullopt;
}

std::optional<Box> bay_box(const Frame& frame, const ResolvedFrame& placed, const Bay& bay) {
    Box box;
    const std::array<const std::array<std::string, 2>*, 3> sides{&bay.x, &bay.y, &bay.z};
    for (std::size_t k = 0; k < 3; ++k) {
        const auto lo = plane_position(frame, placed, (*sides[k])[0], static_cast<Axis>(k));
        const auto hi = plane_position(frame, placed, (*sides[k])[1], static_cast<Axis>(k));
        if (!lo || !hi || *lo >= *hi) return std::nullopt;
        box.lo[k] = *lo;
        box.hi[k] = *hi;
    }
    return box;
}

}  // namespace model
