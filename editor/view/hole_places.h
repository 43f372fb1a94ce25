// Where holes lie in the room, and what is set in them, in words.
#pragma once

#include "editor/derived.h"
#include "engine/render/camera.h"

#include <glm/vec3.hpp>

#include <optional>
#include <string>

namespace editor {

struct HolePlace {
    glm::dvec3 at{0.0};    // its middle on the outer face of its wall, nm
    glm::dvec3 axis{0.0};  // unit, along it
    double radius = 0.0;   // nm
};

// None for a hole that nothing places: of a leaning piece, without a fastener.
std::optional<HolePlace> hole_place(const Derived& derived, model::Index hole);

// The nearest one that the ray goes through or passes within so many mm of, no further along it
// than `most` mm; of any piece or of that one.
std::optional<model::Index> hole_on(const Derived& derived,
                                    const engine::Ray& ray,
                                    double most,
                                    double beside,
                                    std::optional<model::Index> of_piece = std::nullopt);

// "drill #30 for blind rivet 1/8, grip 4-4"; "drill 9/32 in for fixing to the van".
std::string hole_words(const Derived& derived,
                       const model::Catalogue& catalogue,
                       model::Index hole);

}  // namespace editor
