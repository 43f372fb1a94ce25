// How far each piece stands from its place while the skeleton is pulled apart.
#pragma once

#include "model/resolve/resolved.h"

#include <glm/vec3.hpp>

#include <vector>

namespace editor {

// Of each piece by its index, in the room, mm; `share` from 0, as built, to 1. Outward from the
// middle of its frame, further the more pieces it lies upon: what is outermost comes off first. No
// order of assembly is known yet; when one is, it takes the place of `layers_below`.
std::vector<glm::dvec3> pulled_apart(const model::Resolved& resolved, double share);

// Upon how many others each piece lies, one upon the other, as its joints say which of two lies
// outside: 0 for the innermost.
std::vector<int> layers_below(const model::Resolved& resolved);

}  // namespace editor
