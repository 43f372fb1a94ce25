// A piece built anew by an independent kernel (Open CASCADE) from what pieces.json says of it.
#pragma once

#include "model/catalogue/catalogue.h"

#include <nlohmann/json.hpp>

#include <cstddef>

#include <TopoDS_Shape.hxx>

namespace tests {

// The walls as prisms of their outlines (where an edge is bevelled, what lies between the two
// outlines), united; in the root corners, fillets as squares less a cylinder, added; the same round
// the toes and a tube's outer corners, taken off; sloping ends by half spaces, holes by cylinders.
// pieces.json gives no roundings: their radii come from the section's row in the catalogue.
TopoDS_Shape rebuilt_piece(const nlohmann::json& piece, const model::Catalogue& catalogue);

struct KernelFacts {
    double volume = 0.0;  // mm3
    std::size_t solids = 0;
    std::size_t round_holes = 0;  // cylindrical faces that go once round
    bool is_valid = false;
    bool is_closed = false;  // every shell of it
};

KernelFacts facts_of(const TopoDS_Shape& shape);

}  // namespace tests
