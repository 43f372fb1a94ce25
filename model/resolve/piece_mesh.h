// Pieces as drawable triangles and crisp edges, holes visible.
#pragma once

#include "engine/geometry/mesh.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

namespace model {

// In room coordinates, mm. Closed: each leg is a plate with its holes through it; walls that meet
// in a corner share no inner face.
engine::Mesh piece_mesh(const Resolved& resolved, const Catalogue& catalogue, Index piece);

// Heads of the set fasteners, for the picture.
engine::Mesh fastener_mesh(const Resolved& resolved, const Catalogue& catalogue, Index fastener);

}  // namespace model
