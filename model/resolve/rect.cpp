#include "model/resolve/rect.h"

#include <algorithm>
#include <limits>

namespace model {

bool has_area(const Box& rect, std::size_t normal_axis) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (k != normal_axis && rect.lo[k] >= rect.hi[k]) return false;
    }
    return true;
}

Box common_rect(const Box& a, const Box& b, std::size_t axis, Nm position) {
    Box rect = engine::intersection(a, b);
    rect.lo[axis] = rect.hi[axis] = position;
    return rect;
}

double area_of(const Box& rect, std::size_t normal_axis) {
    double area = 1.0;
    for (std::size_t k = 0; k < 3; ++k) {
        if (k != normal_axis) area *= static_cast<double>(rect.hi[k] - rect.lo[k]);
    }
    return area;
}

Box without(const Box& rect, const Box& taken, std::size_t normal_axis) {
    Box best = rect;
    double best_area = -1.0;
    for (std::size_t k = 0; k < 3; ++k) {
        if (k == normal_axis) continue;
        Box below = rect;
        below.hi[k] = std::min(rect.hi[k], taken.lo[k]);
        Box above = rect;
        above.lo[k] = std::max(rect.lo[k], taken.hi[k]);
        for (const Box& side : {below, above}) {
            const double area = has_area(side, normal_axis) ? area_of(side, normal_axis) : 0.0;
            if (area <= best_area) continue;
            best_area = area;
            best = side;
        }
    }
    return best;
}

Nm short_side(const Box& rect, std::size_t normal_axis) {
    Nm side = std::numeric_limits<Nm>::max();
    for (std::size_t k = 0; k < 3; ++k) {
        if (k != normal_axis) side = std::min(side, rect.hi[k] - rect.lo[k]);
    }
    return side;
}

}  // namespace model
