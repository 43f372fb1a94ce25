// Places for the fasteners of a lap whose room is no rectangle: a brace lies in it or beside it.
#pragma once

#include "model/resolve/hole_layout.h"
#include "model/resolve/lap_polygon.h"

#include <span>
#include <vector>

namespace model {

// A polygon that centres must keep away from.
struct OutlineKeptClear {
    FlatPolygon polygon;
    double by = 0.0;  // nm
};

// All in the lap's own coordinates.
struct SlantedRoom {
    Region within;
    std::span<const Region> obstacles;
    std::vector<FlatPolygon> inside;  // centres lie in each of them ...
    double edge_distance = 0.0;       // ... so far from its edges
    std::vector<OutlineKeptClear> outside;
};

// Up to `wanted` places on the marks, the pitch apart, with the least margin to anything as large
// as it can be; their pattern is `points`.
Layout best_points(const SlantedRoom& room, const Marks& marks, int wanted, Nm pitch);

}  // namespace model
