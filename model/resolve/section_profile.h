// A section's outline for drawing: few chords, and which of its edges are crisp.
#pragma once

#include "engine/geometry/extrusion.h"
#include "model/catalogue/catalogue.h"

namespace model {

// In the section's axes a, b, mm. Roundings take a few chords each; exact figures come from
// section_properties, never from this.
engine::Profile section_profile(const Section& section);

// A plain rectangle from the origin.
engine::Profile rectangle_profile(double a_mm, double b_mm);

}  // namespace model
