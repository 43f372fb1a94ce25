// How other kernels can build a drilled angle, and what it costs them.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <cstddef>
#include <filesystem>
#include <span>
#include <string>

namespace tests {

struct KernelTimes {
    double build_ms = 0.0;  // the solids alone
    double mesh_ms = 0.0;   // their triangles
    double volume = 0.0;    // of all, mm3
};

enum class KernelRoute {
    section_then_holes,   // the section pushed along, then one cut with all holes
    drilled_walls_united  // each wall a face with round holes, pushed through; then one union
};

// By Open CASCADE. The pieces must be angles with square corners and ends.
KernelTimes kernel_times(const model::Resolved& resolved,
                         const model::Catalogue& catalogue,
                         std::span<const model::Index> pieces,
                         KernelRoute route);

// The same pieces for bench_solids.mjs.
std::string pieces_for_wasm(const model::Resolved& resolved,
                            const model::Catalogue& catalogue,
                            std::span<const model::Index> pieces);

}  // namespace tests
