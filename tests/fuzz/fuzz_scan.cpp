// libFuzzer target: whatever the bytes are, every reader of meshes comes to an end with a good mesh
// or a reason, within the memory that libFuzzer is told to allow (-malloc_limit_mb). Build with the
// preset `fuzz`.
#include "engine/files/scan_readers.h"
#include "engine/geometry/triangle_tree.h"

#include "tests/engine/files/scan_checks.h"

#include <cstdint>
#include <cstdio>
#include <cstdlib>

namespace {

engine::Result<engine::ScanMesh> mesh_by(bool (*reader)(engine::ScanReading&),
                                         std::string_view bytes) {
    const engine::ReadProgress progress;
    engine::ScanReading reading{bytes, progress};
    if (!reader(reading)) return reading.error();
    return std::move(reading).result();
}

void require_promises(const engine::Result<engine::ScanMesh>& mesh) {
    const auto broken = tests::broken_promise(mesh);
    if (broken.empty() && !mesh) return;
    if (broken.empty()) {
        engine::TriangleTree::built(std::span<const engine::ScanPoint>(mesh->points),
                                    std::span<const engine::ScanTriangle>(mesh->triangles), {});
        return;
    }
    std::fprintf(stderr, "%s\n", broken.c_str());
    std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view bytes{reinterpret_cast<const char*>(data), size};
    for (const auto reader :
         {engine::read_stl, engine::read_ply, engine::read_obj, engine::read_glb})
        require_promises(mesh_by(reader, bytes));
    require_promises(engine::read_scan_mesh_bytes(bytes, ""));
    return 0;
}
