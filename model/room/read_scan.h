// Reading a scanned mesh so that clearances can be measured from it.
#pragma once

#include "engine/files/scan_mesh.h"
#include "engine/measure/tape.h"
#include "engine/result.h"
#include "model/room/scans.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <span>
#include <vector>

namespace model {

// The mesh's points, its lengths being in that unit. Error: out_of_range, where one of them lies
// further from the origin than any length that is worked with.
engine::Result<std::vector<engine::ScanPoint>> points_in_mm(const engine::ScanMesh& mesh,
                                                            engine::LengthUnit unit);

// The scan of a mesh with those points. `go_on` (may be empty) is told how much is done, 0 to 1,
// and answers false to stop: then there is none.
std::shared_ptr<const Scan> scan_of(const engine::ScanMesh& mesh,
                                    std::span<const engine::ScanPoint> points,
                                    const std::function<bool(double done)>& go_on = {});

// A scan of a file whose lengths are in that unit. `go_on` (may be empty) is told how much is done,
// 0 to 1, and answers false to stop. Errors: those of engine::read_scan_mesh and of points_in_mm.
engine::Result<std::shared_ptr<const Scan>> read_scan(
    const std::filesystem::path& file,
    engine::LengthUnit unit,
    const std::function<bool(double done)>& go_on = {});

// All scans of a project's room, or why one cannot be read; a relative file starts at `folder`.
ScanLibrary read_scans(const Project& project, const std::filesystem::path& folder);

}  // namespace model
