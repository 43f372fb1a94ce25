// Pieces as drawable triangles and crisp edges, holes visible.
#pragma once

#include "engine/geometry/mesh.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <memory>

namespace model {

// In room coordinates, mm. Closed: a piece is one solid with its holes through its walls; walls
// that meet in a corner share no inner face. Rounded roots, toes and tube corners are drawn.
// A hole that runs into another wall, a rounded corner, an end or another hole is left out. A piece
// that makes no solid (see piece_solid.h) is drawn as the boxes of its walls.
engine::Mesh piece_mesh(const Resolved& resolved, const Catalogue& catalogue, Index piece);

// A set fastener for the picture, in room coordinates, mm: its head on the first plate and what
// stands out of the last one.
engine::Mesh fastener_mesh(const Resolved& resolved, const Catalogue& catalogue, Index fastener);

// The same for many, into one mesh: keeps its working memory and the sections' outlines from one
// piece to the next. Both references must outlive it.
class PieceMesher {
public:
    PieceMesher(const Resolved& resolved, const Catalogue& catalogue);
    ~PieceMesher();
    PieceMesher(const PieceMesher&) = delete;
    PieceMesher& operator=(const PieceMesher&) = delete;

    // Room in a mesh for all pieces and fasteners, so that it grows once.
    void reserve_for_all(engine::Mesh& mesh);

    void append(engine::Mesh& mesh, Index piece);
    void append_fastener(engine::Mesh& mesh, Index fastener) const;

private:
    struct Work;
    std::unique_ptr<Work> work_;
};

}  // namespace model
