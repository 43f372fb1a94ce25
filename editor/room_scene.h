// The room's obstacles as translucent shapes.
#pragma once

#include "engine/render/scene.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

namespace editor {

// One item for each obstacle whose formulas give a shape; none of them can be picked. Of a wheel
// well, the two top edges along it are rounded and the inner side leans; its ends stay upright.
// Scanned obstacles are left out.
void add_room(engine::SceneBatch& batch,
              const model::Project& project,
              const model::Resolved& resolved);

}  // namespace editor
