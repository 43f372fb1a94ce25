#include "model/resolve/sheet_size.h"

#include <algorithm>
#include <cstddef>

namespace model {

Nm sheet_thickness(const Piece& piece) {
    const auto& plate = piece.plates[0];
    return plate.box.hi[plate.normal_axis] - plate.box.lo[plate.normal_axis];
}

Nm sheet_width(const Resolved& resolved, const Piece& piece) {
    const auto& plate = piece.plates[0];
    if (plate.outline == no_index) {
        const std::size_t across = 3 - index_of(piece.run) - plate.normal_axis;
        return piece.extents.hi[across] - piece.extents.lo[across];
    }
    Nm width = 0;
    for (const Index outline : {plate.outline, plate.outline_far}) {
        if (outline == no_index) continue;
        for (const auto& corner : resolved.outlines[outline].corners)
            width = std::max(width, corner[1]);
    }
    return width;
}

}  // namespace model
