#include "editor/scan_loader.h"
#include "editor/scan_mesh_drawn.h"
#include "model/room/read_scan.h"

#include <utility>

namespace editor {
namespace {

engine::Error stopped() {
    return {engine::ErrorCode::cancelled, "", "reading was stopped; read it again to go on"};
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
    const auto points = model::points_in_mm(*mesh, unit);
    if (!points) return points.error();
    auto scan =
        model::scan_of(*mesh, *points, [&](double done) { return go_on(0.5 + done * 0.4); });
    if (!scan) return stopped();
    auto drawn = drawn_scan(*points, mesh->triangles, [&] { return go_on(0.95); });
    if (!drawn) return stopped();
    return LoadedScan{std::move(scan), std::make_shared<const engine::Mesh>(*std::move(drawn))};
}

}  // namespace editor
