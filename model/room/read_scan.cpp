#include "model/room/read_scan.h"

#include "engine/files/scan_unit.h"
#include "model/resolve/values.h"
#include "model/room/scan_shell.h"

#include <algorithm>
#include <utility>
#include <variant>
#include <vector>

namespace model {
namespace {

constexpr double share_of_reading = 0.5;  // of the time, about

constexpr double share_of_tree = 0.9;  // of making a scan of a mesh

bool is_workable(const engine::ScanPoint& point) {
    constexpr auto most = static_cast<float>(most_length / 1'000'000);
    return std::ranges::all_of(point, [](float at) { return at >= -most && at <= most; });
}

}  // namespace

engine::Result<std::vector<engine::ScanPoint>> points_in_mm(const engine::ScanMesh& mesh,
                                                            engine::LengthUnit unit) {
    auto points = mesh.points;
    const auto scale = static_cast<float>(engine::mm_in(unit));
    for (auto& point : points) {
        for (float& coordinate : point) coordinate *= scale;
        if (is_workable(point)) continue;
        return engine::Error{engine::ErrorCode::out_of_range, "",
                             "in this unit a point of the scan lies more than 1 km from its "
                             "origin; choose a smaller unit, or save it nearer to its origin"};
    }
    return points;
}

std::shared_ptr<const Scan> scan_of(const engine::ScanMesh& mesh,
                                    std::span<const engine::ScanPoint> points,
                                    const std::function<bool(double done)>& go_on) {
    const auto tells = [&](double from, double share) {
        return [&go_on, from, share](double done) { return !go_on || go_on(from + done * share); };
    };
    auto tree = engine::TriangleTree::built(
        points, std::span<const engine::ScanTriangle>(mesh.triangles), tells(0.0, share_of_tree));
    if (!tree) return nullptr;
    const auto closed =
        is_closed(mesh.triangles, points.size(), tells(share_of_tree, 1.0 - share_of_tree));
    if (!closed) return nullptr;
    return std::make_shared<const Scan>(
        Scan{.tree = std::move(*tree),
             .dropped = mesh.dropped,
             .is_closed = *closed,
             .is_hollow = *closed && is_seen_from_within(points, mesh.triangles)});
}

engine::Result<std::shared_ptr<const Scan>> read_scan(
    const std::filesystem::path& file,
    engine::LengthUnit unit,
    const std::function<bool(double done)>& go_on) {
    engine::ReadProgress progress;
    if (go_on) progress.go_on = [&](double done) { return go_on(done * share_of_reading); };
    const auto mesh = engine::read_scan_mesh(file, progress);
    if (!mesh) return mesh.error();
    const auto points = points_in_mm(*mesh, unit);
    if (!points) {
        return engine::Error{points.error().code, file.filename().string(), points.error().message};
    }
    auto scan = scan_of(*mesh, *points, [&](double done) {
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
        scans.emplace(scan_key(*scan), read_scan(folder / scan->file, scan->unit));
    }
    return scans;
}

}  // namespace model
