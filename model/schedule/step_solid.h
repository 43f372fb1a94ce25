// An exact solid as the entities of an exchange file.
#pragma once

#include "engine/geometry/solid.h"
#include "model/schedule/step_text.h"

namespace model {

// MANIFOLD_SOLID_BREP of one closed shell: planes and cylinders, each edge shared by two faces; a
// cylinder that closes on itself has a seam. mm.
StepId step_solid(StepText& step, const engine::Solid& solid, std::string_view name);

}  // namespace model
