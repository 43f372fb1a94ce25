// What must hold of any file that was read as a scan, or was not.
#pragma once

#include "engine/files/scan_mesh.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace tests {

// Empty where all is as scan_mesh.h promises.
inline std::string broken_promise(const engine::ScanMesh& mesh) {
    if (mesh.triangles.empty()) return "no triangles";
    std::vector<bool> is_used(mesh.points.size());
    for (const auto& corners : mesh.triangles) {
        for (const auto corner : corners) {
            if (corner >= mesh.points.size()) return "an index out of range";
            is_used[corner] = true;
        }
        if (corners[0] == corners[1] || corners[1] == corners[2] || corners[2] == corners[0])
            return "a degenerate triangle";
    }
    if (std::count(is_used.begin(), is_used.end(), false) > 0) return "an unused point";
    for (const auto& point : mesh.points)
        for (std::size_t axis = 0; axis < 3; ++axis)
            if (!std::isfinite(point[axis]) || point[axis] < mesh.lo[axis] ||
                point[axis] > mesh.hi[axis])
                return "a point that is not finite or out of the bounds";
    return {};
}

inline std::string broken_promise(const engine::Result<engine::ScanMesh>& mesh) {
    if (mesh) return broken_promise(*mesh);
    if (mesh.error().message.empty()) return "no reason";
    if (mesh.error().code != engine::ErrorCode::bad_file) return "not a bad file";
    return {};
}

}  // namespace tests
