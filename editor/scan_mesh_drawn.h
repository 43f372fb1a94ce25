// Scanned meshes as they are drawn: few enough triangles for any screen, smooth, without edges.
#pragma once

#include "engine/files/scan_mesh.h"
#include "engine/geometry/mesh.h"
#include "engine/geometry/placement.h"
#include "engine/render/scene.h"
#include "model/resolve/resolved.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>

namespace editor {

// A mesh of more triangles is simplified: points of one cell of a grid become one, and what then
// lies within a cell is left out. Clearances are always measured from all of them.
inline constexpr std::size_t most_drawn_triangles = 300'000;

// Points in mm. None once `go_on`, which is asked all along, answers false.
std::optional<engine::Mesh> drawn_scan(std::span<const engine::ScanPoint> points,
                                       std::span<const engine::ScanTriangle> triangles,
                                       const std::function<bool()>& go_on);

// At the end of `mesh`, turned and shifted.
void append_placed(engine::Mesh& mesh, const engine::Mesh& scan, const engine::Placement& place);

engine::ItemLook scan_look(model::Index obstacle);

}  // namespace editor
