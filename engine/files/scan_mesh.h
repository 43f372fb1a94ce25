// Triangle meshes as scanning programs write them: STL (binary and ASCII), PLY (ASCII and binary of
// both byte orders), OBJ and GLB (binary glTF 2.0). The files may come from anywhere and be broken
// in any way: what cannot be read whole is refused with its place and the mend.
#pragma once

#include "engine/measure/tape.h"
#include "engine/result.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string_view>
#include <vector>

namespace engine {

using ScanPoint = std::array<float, 3>;
using ScanTriangle = std::array<std::uint32_t, 3>;

// Coordinates are the file's own: its axes and its unit. Every index is below points.size(), every
// coordinate is finite, every point is a corner of some triangle, and no triangle is degenerate.
struct ScanMesh {
    std::vector<ScanPoint> points;
    std::vector<ScanTriangle> triangles;
    std::size_t dropped = 0;  // left out: no area, or a corner that is not finite
    ScanPoint lo{};           // the least box round the points
    ScanPoint hi{};
    std::optional<LengthUnit> unit;  // as the file states it: glTF means metres, others say nothing
    bool is_y_up = false;            // as the file states it: glTF says so, others say nothing

    bool operator==(const ScanMesh&) const = default;
};

struct ReadProgress {
    std::function<bool(double done)> go_on;  // called now and then with 0 .. 1; false cancels
};

inline constexpr std::uintmax_t most_scan_bytes = std::uintmax_t{1} << 30U;

// Errors: bad_file, with the file and its line or element in `where`; cancelled.
//
// The kind is told by the content and only then by the name. Points of STL files, which repeat them
// for every triangle, are welded where all bits are equal. Polygons become fans of triangles, which
// is right for convex ones. Textures, colours, normals, poses and shape keys are passed over.
//
// Memory: reading takes no more than ten times the file's size and 64 KiB. The file itself is one
// part; whatever else grows (points, triangles, the table for welding, the tree of a GLB's JSON)
// asks first whether it stays within nine parts, and counts in the file are believed only as far
// as the bytes behind them reach.
Result<ScanMesh> read_scan_mesh(const std::filesystem::path& path,
                                const ReadProgress& progress = {});

// The same from bytes in memory; `name_or_kind` is a file's name or its ending, "stl".
Result<ScanMesh> read_scan_mesh_bytes(std::string_view bytes,
                                      std::string_view name_or_kind,
                                      const ReadProgress& progress = {});

}  // namespace engine
