// What a scan's triangles are together: whether they close, and from which side they were seen.
#pragma once

#include "engine/files/scan_mesh.h"

#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace model {

// Whether each edge lies between two triangles, whichever way round these are. `go_on` is told how
// much is done, 0 to 1; none where it answers false. Corners are below `points`.
std::optional<bool> is_closed(const std::vector<engine::ScanTriangle>& triangles,
                              std::size_t points,
                              const std::function<bool(double done)>& go_on);

// Of a closed mesh. Faces look away from what is solid: the volume that they enclose is negative
// where the mesh was seen from within.
bool is_seen_from_within(std::span<const engine::ScanPoint> points,
                         const std::vector<engine::ScanTriangle>& triangles);

}  // namespace model
