// Drawable faces of the bodies that an obstacle of the room is made of.
#pragma once

#include "engine/geometry/convex.h"
#include "engine/geometry/mesh.h"

#include <cstddef>
#include <span>

namespace editor {

// As one closed shape: faces that two bodies share are left out. Edges are crisp where faces meet
// at more than a shallow angle.
void append_bodies(engine::Mesh& mesh, std::span<const engine::Prism> bodies);

// Of a place across a surface: the axis, and how far the surface is shown along it, mm.
struct ShownAcross {
    std::size_t axis = 2;
    double least = 0.0;
    double most = 0.0;
};

// Only the near faces, and of them those that lie within what is shown. Creases across the surface
// and its outline are crisp.
void append_near_faces(engine::Mesh& mesh,
                       std::span<const engine::Prism> bodies,
                       const ShownAcross& shown);

// Makes dashes of the edges from `first` on.
void dash_edges(engine::Mesh& mesh, std::size_t first);

}  // namespace editor
