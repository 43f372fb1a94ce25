#include "editor/scan_loader.h"
#include "editor/scan_mesh_drawn.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>
#include <vector>

namespace editor {
namespace {

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

std::vector<engine::ScanPoint> in_mm(const engine::ScanMesh& mesh, engine::LengthUnit unit) {
    auto points = mesh.points;
    const float scale = mm_in(unit);
    for (auto& point : points) {
        for (auto& value : point) value *= scale;
    }
    return points;
}

// Each edge is passed once in each direction.
bool is_closed(const std::vector<engine::ScanTriangle>& triangles) {
    std::vector<std::uint64_t> edges;
    edges.reserve(triangles.size() * 3);
    for (const auto& corners : triangles) {
        for (std::size_t i = 0; i < 3; ++i) {
            const auto [a, b] = std::minmax(corners[i], corners[(i + 1) % 3]);
            edges.push_back(std::uint64_t{a} << 32U | b);
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

engine::Error stopped() {
    return {engine::ErrorCode::cancelled, "",
            "reading was stopped; choose the file again to go on"};
}

}  // namespace

engine::Result<LoadedScan> loaded_scan(const std::filesystem::path& file,
                                       engine::LengthUnit unit,
                                       const ReadMesh& read,
                                       const BackgroundWork<LoadedScan>::GoOn& go_on) {
    ReadMesh mesh = read;
    if (!mesh) {
        auto fresh = engine::read_scan_mesh(file, {[&](double done) { return go_on(done / 2); }});
        if (!fresh) return fresh.error();
        mesh = std::make_shared<const engine::ScanMesh>(std::move(fresh).value());
    }
    const auto points = in_mm(*mesh, unit);
    auto tree = engine::TriangleTree::built(std::span<const engine::ScanPoint>(points),
                                            std::span<const engine::ScanTriangle>(mesh->triangles),
                                            [&](double done) { return go_on(0.5 + done * 0.4); });
    if (!tree) return stopped();
    const bool closed = is_closed(mesh->triangles);
    if (!go_on(0.95)) return stopped();
    return LoadedScan{std::make_shared<const model::Scan>(model::Scan{
                          .tree = *std::move(tree), .dropped = mesh->dropped, .is_closed = closed}),
                      std::make_shared<const engine::Mesh>(drawn_scan(points, mesh->triangles))};
}

}  // namespace editor
