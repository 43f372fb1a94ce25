// What follows from a project, as a scene that can be drawn and picked.
#pragma once

#include "engine/render/scene.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

namespace editor {

// Pieces by their index as pick id, told apart by stock; fasteners; the room's obstacles,
// translucent; the ground. The scene's revision is left at 0. An old scene may be given whose
// memory is to be used again.
engine::SceneData skeleton_scene(const model::Project& project,
                                 const model::Catalogue& catalogue,
                                 const model::Resolved& resolved,
                                 engine::SceneData memory = {});

// How far round the camera must go so that front, left and top are those of the cabinets (radians):
// their frames' quarter-turn where they all share one, else 0.
double front_turn(const model::Resolved& resolved);

}  // namespace editor
