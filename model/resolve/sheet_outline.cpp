#include "model/resolve/sheet_outline.h"

#include <algorithm>

namespace model {

FlatPolygon sheet_loop(const Piece& part, const Corners& loop) {
    const auto axes = axes_across(part.plates[0].normal_axis);
    FlatPolygon polygon;
    for (const auto& corner : loop) {
        FlatPoint at{};
        for (std::size_t k = 0; k < 2; ++k) {
            const bool is_run = axes[k] == index_of(part.run);
            const bool is_a = axes[k] == index_of(part.a_axis);
            const int sense = is_run ? part.run_sense : is_a ? part.a_sense : part.b_sense;
            at[k] = static_cast<double>(part.datum[axes[k]] + sense * corner[is_run ? 0 : 1]);
        }
        polygon.push_back(at);
    }
    if (area_of(polygon) < 0.0) std::ranges::reverse(polygon);
    return polygon;
}

}  // namespace model
