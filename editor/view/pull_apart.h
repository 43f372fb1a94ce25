// How far each piece stands from its place while the skeleton is taken apart.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/resolve/resolved.h"

#include <glm/vec3.hpp>

#include <span>
#include <vector>

namespace editor {

// Of each piece by its index, in the room, mm; `share` from 0, as built, to 1. What is put on last
// comes off first, the way it came; a sub-assembly leaves whole and then comes apart in itself.
// `approaches` are those of all pieces.
std::vector<glm::dvec3> pulled_apart(const model::Resolved& resolved,
                                     const model::AssemblyOrder& order,
                                     std::span<const model::Approach> approaches,
                                     double share);

}  // namespace editor
