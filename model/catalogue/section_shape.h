// A section's exact outline and its properties, computed from the shape.
#pragma once

#include "engine/statics/section_properties.h"
#include "model/catalogue/catalogue.h"

namespace model {

// Outline in the section's axes a, b (mm), arcs as chords.
engine::SectionShape section_shape(const Section& section);

// With torsion and warping constant and shear centre by the form's own rule (sources beside each).
engine::SectionProperties section_properties(const Section& section);

// Mass per length in kg/m.
double mass_per_metre(const Section& section, const Alloy& alloy);

}  // namespace model
