// libFuzzer target: whatever the bytes are, every reader of meshes comes to an end, within its
// memory, with a good mesh or a reason. Build with the preset `fuzz`; the memory that is checked
// here is what libFuzzer is told to allow (-rss_limit_mb, -malloc_limit_mb).
#include "engine/files/scan_mesh.h"

#include "tests/engine/files/scan_checks.h"

#include <cstdint>
#include <cstdio>
#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view bytes{reinterpret_cast<const char*>(data), size};
    // The content tells the kind where it can; else each reader is tried on it.
    for (const auto* kind : {"stl", "ply", "obj", "glb"}) {
        const auto broken = tests::broken_promise(engine::read_scan_mesh_bytes(bytes, kind));
        if (broken.empty()) continue;
        std::fprintf(stderr, "%s: %s\n", kind, broken.c_str());
        std::abort();
    }
    return 0;
}
