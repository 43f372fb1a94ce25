#include "model/room/read_scan.h"

#include <algorithm>
#include <cstdint>
#include <utility>
#include <variant>
#include <vector>

namespace model {
namespace {

constexpr double share_of_reading = 0.5;  // of the time, about

float mm_in(engine::LengthUnit unit) {
    switch (unit) {
        case engine::LengthUnit::inch:
            return 25.4F;
        case engine::LengthUnit::foot:
            return 304.8F;
        case engine::LengthUnit::millimetre:
            return 1.0F;
        case engine::LengthUnit::centimetre:
            return 10.0F;
        case engine::LengthUnit::metre:
            break;
    }
    return 1000.0F;
}

// Whether each edge lies between two triangles, whichever way round these are.
bool is_closed(const std::vector<engine::ScanTriangle>& triangles) {
    std::vector<std::uint64_t> edges;
    edges.reserve(3 * triangles.size());
    for (const auto& corners : triangles) {
        for (std::size_t i = 0; i < 3; ++i) {
            const std::uint64_t a = corners[i];
            const std::uint64_t b = corners[(i + 1) % 3];
            edges.push_back(a < b ? (a << 32U) | b : (b << 32U) | a);
        }
    }
    std::sort(edges.begin(), edges.end());
    for (std::size_t i = 0; i < edges.size(); i += 2) {
        const bool is_pair = i + 1 < edges.size() && edges[i] == edges[i + 1];
        const bool is_more = i + 2 < edges.size() && edges[i] == edges[i + 2];
        if (!is_pair || is_more) return false;
    }
    return !edges.empty();
}

// Faces look away from what is solid: the volume that they enclose is negative where the mesh was
// seen from within.
bool is_seen_from_within(std::span<const engine::ScanPoint> points,
                         const std::vector<engine::ScanTriangle>& triangles) {
    const auto& from = points[triangles.front()[0]];
    const auto side = [&](std::uint32_t corner, std::size_t k) {
        return static_cast<double>(points[corner][k]) - static_cast<double>(from[k]);
    };
    double six_volumes = 0.0;
    for (const auto& [a, b, c] : triangles) {
        for (std::size_t k = 0; k < 3; ++k) {
            const std::size_t l = (k + 1) % 3;
            const std::size_t m = (k + 2) % 3;
            six_volumes += side(a, k) * (side(b, l) * side(c, m) - side(b, m) * side(c, l));
        }
    }
    return six_volumes < 0.0;
}

}  // namespace

std::vector<engine::ScanPoint> points_in_mm(const engine::ScanMesh& mesh, engine::LengthUnit unit) {
    auto points = mesh.points;
    const float scale = mm_in(unit);
    for (auto& point : points) {
        for (float& coordinate : point) coordinate *= scale;
    }
    return points;
}

std::shared_ptr<const Scan> scan_of(const engine::ScanMesh& mesh,
                                    std::span<const engine::ScanPoint> points,
                                    const std::function<bool(double done)>& go_on) {
    auto tree =
        engine::TriangleTree::built(points, std::span<const engine::ScanTriangle>(mesh.triangles),
                                    [&](double done) { return !go_on || go_on(done); });
    if (!tree) return nullptr;
    const bool closed = is_closed(mesh.triangles);
    return std::make_shared<const Scan>(
        Scan{.tree = std::move(*tree),
             .dropped = mesh.dropped,
             .is_closed = closed,
             .is_hollow = closed && is_seen_from_within(points, mesh.triangles)});
}

engine::Result<std::shared_ptr<const Scan>> read_scan(
    const std::filesystem::path& file,
    engine::LengthUnit unit,
    const std::function<bool(double done)>& go_on) {
    engine::ReadProgress progress;
    if (go_on) progress.go_on = [&](double done) { return go_on(done * share_of_reading); };
    const auto mesh = engine::read_scan_mesh(file, progress);
    if (!mesh) return mesh.error();
    auto scan = scan_of(*mesh, points_in_mm(*mesh, unit), [&](double done) {
        return !go_on || go_on(share_of_reading + done * (1.0 - share_of_reading));
    });
    if (scan) return scan;
    return engine::Error{engine::ErrorCode::cancelled, file.filename().string(),
                         "reading was stopped"};
}

ScanLibrary read_scans(const Project& project, const std::filesystem::path& folder) {
    ScanLibrary scans;
    for (const auto& obstacle : project.room) {
        const auto* scan = std::get_if<ScannedObstacle>(&obstacle.shape);
        if (scan == nullptr || scans.contains(scan_key(*scan))) continue;
        if (auto read = read_scan(folder / scan->file, scan->unit))
            scans.emplace(scan_key(*scan), *read);
    }
    return scans;
}

}  // namespace model
