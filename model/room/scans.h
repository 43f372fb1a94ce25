// Scanned meshes that obstacles refer to, once they are read. Reading is the caller's business,
// since what follows from a project never waits for a file.
#pragma once

#include "engine/geometry/triangle_tree.h"
#include "engine/result.h"
#include "model/project/project.h"

#include <map>
#include <memory>
#include <string>

namespace model {

struct Scan {
    engine::TriangleTree tree;  // in the file's own axes, mm
    std::size_t dropped = 0;    // triangles without area, or with a corner nowhere
    bool is_closed = false;     // each edge lies between two triangles, so there is an inside
    bool is_hollow = false;  // closed, but seen from within: the shell of a van, its holes filled
};

// What tells scans apart: the file as stated, and its unit.
std::string scan_key(const ScannedObstacle& scan);

// By scan_key: those that are read, and of those that cannot be read the reason.
using ScanLibrary = std::map<std::string, engine::Result<std::shared_ptr<const Scan>>, std::less<>>;

}  // namespace model
