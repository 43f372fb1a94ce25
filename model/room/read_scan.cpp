#include "model/room/read_scan.h"

#include "engine/files/scan_mesh.h"

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

// Whether each edge lies between two triangles that run along it in opposite ways.
bool is_closed(const std::vector<engine::ScanTriangle>& triangles) {
    std::vector<std::pair<std::uint64_t, std::int8_t>> edges;
    edges.reserve(3 * triangles.size());
    for (const auto& corners : triangles) {
        for (std::size_t i = 0; i < 3; ++i) {
            const std::uint64_t a = corners[i];
            const std::uint64_t b = corners[(i + 1) % 3];
            edges.emplace_back(a < b ? (a << 32U) | b : (b << 32U) | a,
                               static_cast<std::int8_t>(a < b ? 1 : -1));
        }
    }
    std::sort(edges.begin(), edges.end());
    for (std::size_t i = 0; i < edges.size(); i += 2) {
        if (i + 1 >= edges.size() || edges[i].first != edges[i + 1].first) return false;
        if (edges[i].second == edges[i + 1].second) return false;
        if (i + 2 < edges.size() && edges[i + 2].first == edges[i].first) return false;
    }
    return true;
}

}  // namespace

engine::Result<std::shared_ptr<const Scan>> read_scan(
    const std::filesystem::path& file,
    engine::LengthUnit unit,
    const std::function<bool(double done)>& go_on) {
    engine::ReadProgress progress;
    if (go_on) progress.go_on = [&](double done) { return go_on(done * share_of_reading); };
    auto read = engine::read_scan_mesh(file, progress);
    if (!read) return read.error();
    auto mesh = std::move(read).value();
    const float scale = mm_in(unit);
    for (auto& point : mesh.points) {
        for (float& coordinate : point) coordinate *= scale;
    }
    const auto rest = [&](double done) {
        return !go_on || go_on(share_of_reading + done * (1.0 - share_of_reading));
    };
    auto tree = engine::TriangleTree::built(mesh.points, mesh.triangles, rest);
    if (!tree) {
        return engine::Error{engine::ErrorCode::cancelled, file.filename().string(),
                             "reading was stopped"};
    }
    return std::shared_ptr<const Scan>(
        std::make_shared<Scan>(Scan{.tree = std::move(*tree),
                                    .dropped = mesh.dropped,
                                    .is_closed = is_closed(mesh.triangles)}));
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
