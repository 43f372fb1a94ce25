// Solids as triangles: every edge cut into chords once, so that the faces on both sides meet in the
// same points.
#pragma once

#include "engine/geometry/mesh.h"
#include "engine/geometry/placement.h"
#include "engine/geometry/solid.h"

#include <memory>

namespace engine {

struct SolidMeshWork;

// Keeps its working memory from one solid to the next.
class SolidMesher {
public:
    SolidMesher();
    ~SolidMesher();
    SolidMesher(const SolidMesher&) = delete;
    SolidMesher& operator=(const SolidMesher&) = delete;

    // Appends a closed mesh: each edge of a triangle belongs to one other triangle. A whole turn
    // takes hole_chords chords, a lesser arc a sixth of those for each quarter begun. False, and
    // nothing appended, where a flat face's loops cross or touch.
    bool append(Mesh& mesh, const Solid& solid, const Placement& place);

private:
    std::unique_ptr<SolidMeshWork> work_;
};

}  // namespace engine
