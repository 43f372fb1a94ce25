// Where the skeleton is seen from, and what the pointer is over.
#pragma once

#include "engine/render/camera.h"
#include "model/resolve/resolved.h"

#include <optional>

namespace editor {

struct ViewState {
    engine::Camera camera = engine::seen_from(engine::ViewFrom::corner);
    engine::Viewport viewport;  // pixels of the picture
    bool wants_fit = true;
    bool is_fitted = false;  // still as it was fitted: another size of the view fits it again
    std::optional<model::Index> hovered;           // piece
    std::optional<model::Index> hovered_obstacle;  // in Project::room
    std::optional<glm::dvec3> hovered_at;          // where on it, mm in the room
    bool is_turning = false;                       // a drag that moves the camera is under way
};

}  // namespace editor
