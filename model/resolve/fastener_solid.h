// A set fastener as a turned solid, for the picture.
#pragma once

#include "engine/geometry/mesh.h"
#include "engine/geometry/mesh_writer.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

namespace model {

// The most that one of them appends.
engine::MeshCounts fastener_counts();

// In room coordinates, mm. Appends nothing for a fastener that is not in the catalogue.
void append_fastener_solid(engine::Mesh& mesh,
                           const Resolved& resolved,
                           const Catalogue& catalogue,
                           Index fastener);

}  // namespace model
