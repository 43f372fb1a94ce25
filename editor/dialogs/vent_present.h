// The openings for air that a panel has already.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/vent_form.h"

#include <vector>

namespace editor {

// Those that the form put there before; they go when it puts others.
std::vector<model::CutOut> openings_now(const VentForm& form, const Derived& derived);

// Fills in how many there are, how large, how they are set and where; nothing where there are none.
void take_openings(VentForm& form, const Derived& derived);

}  // namespace editor
