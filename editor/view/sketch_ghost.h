// What is not there yet, as translucent shapes: bars, bays, a layout plane.
#pragma once

#include "editor/view/plane_grid.h"
#include "engine/render/scene.h"
#include "model/catalogue/catalogue.h"

#include <memory>
#include <vector>

namespace editor {

using Ghost = std::shared_ptr<const engine::SceneBatch>;

Ghost ghost_of_pieces(const model::Resolved& resolved,
                      const model::Catalogue& catalogue,
                      const std::vector<model::Index>& pieces);

Ghost ghost_of_cells(const PlaneGrid& grid, const std::vector<GridCell>& cells);

// As large as the frame's outline.
Ghost ghost_of_plane(const PlaneGrid& grid, model::Axis axis, model::Nm at);

}  // namespace editor
