// Where the tags of a frame's layout planes stand in the picture: beside its outline, none on
// another one.
#pragma once

#include "editor/kit/scopes.h"
#include "editor/view/plane_grid.h"

#include <imgui.h>

#include <functional>
#include <string>
#include <vector>

namespace editor {

struct PlaneTag {
    model::Axis axis = model::Axis::x;
    GridPlane plane;
    ImVec2 anchor;  // where the plane meets the outline's edge
    Area at;
    glm::dvec2 pixels_per_mm{0.0};  // along the axis, in pixels of the picture
};

// Of the planes whose axis is seen from the side. `size_of` is how large a tag is drawn; what lies
// in `taken` is kept clear.
std::vector<PlaneTag> plane_tags(const PlaneGrid& grid,
                                 const ViewState& view,
                                 const Area& area,
                                 float pixel_scale,
                                 std::vector<Area> taken,
                                 const std::function<ImVec2(const GridPlane&)>& size_of);

}  // namespace editor
