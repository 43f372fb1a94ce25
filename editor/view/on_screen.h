// Places of the room in the window.
#pragma once

#include "editor/kit/scopes.h"
#include "editor/view/view_state.h"

#include <imgui.h>

#include <optional>

namespace editor {

// None behind the eye.
inline std::optional<ImVec2> on_screen(const Area& area,
                                       const ViewState& view,
                                       const glm::dvec3& mm) {
    const auto pixel = engine::pixel_of(view.camera, mm, view.viewport);
    if (!pixel) return std::nullopt;
    const double scale = static_cast<double>(ImGui::GetIO().DisplayFramebufferScale.x);
    return ImVec2{area.x + static_cast<float>(pixel->x / scale),
                  area.y + static_cast<float>(pixel->y / scale)};
}

inline bool are_apart(const Area& a, const Area& b) {
    return a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y ||
           b.y + b.height <= a.y;
}

}  // namespace editor
