// A section's outline: for drawing with few chords, and exact with true arcs.
#pragma once

#include "engine/geometry/bar_solid.h"
#include "engine/geometry/extrusion.h"
#include "model/catalogue/catalogue.h"

namespace model {

// In the section's axes a, b, mm. Roundings take a few chords each; exact figures come from
// section_properties, never from this.
engine::Profile section_profile(const Section& section);

// The same with true arcs.
engine::BarSection bar_section(const Section& section);

// A plain rectangle from the origin.
engine::Profile rectangle_profile(double a_mm, double b_mm);

}  // namespace model
