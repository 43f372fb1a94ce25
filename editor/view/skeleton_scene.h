// What follows from a project, as a scene that can be drawn and picked.
#pragma once

#include "editor/derived.h"
#include "engine/render/scene.h"

namespace editor {

// Pieces by their index as pick id, told apart by stock; heads of fasteners and holes show.
engine::SceneData skeleton_scene(const Derived& derived, const model::Catalogue& catalogue);

}  // namespace editor
