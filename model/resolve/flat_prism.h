// A flat outline on a plate as a prism through the plate's thickness.
#pragma once

#include "engine/geometry/convex.h"
#include "model/resolve/lap_polygon.h"
#include "model/resolve/piece_place.h"
#include "model/resolve/resolved.h"

#include <cstddef>

namespace model {

// The corners are in nanometres along the axes across the normal one, in the piece's frame; the
// prism is in mm.
inline engine::Prism flat_prism(const FlatPolygon& corners,
                                const Plate& plate,
                                std::size_t normal) {
    const auto axes = axes_across(normal);
    engine::Prism prism;
    for (const auto& corner : corners) {
        engine::Vector at{};
        for (std::size_t k = 0; k < 2; ++k) at[axes[k]] = corner[k] / 1e6;
        at[normal] = in_mm(plate.box.lo[normal]);
        prism.near.push_back(at);
        at[normal] = in_mm(plate.box.hi[normal]);
        prism.far.push_back(at);
    }
    return prism;
}

}  // namespace model
