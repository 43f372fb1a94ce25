// The panels of a frame: their size, what is said of them, and the way to change them.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/selection.h"

namespace editor {

// Clicking a panel's size selects it; its name and "vents" open their forms.
void draw_panel_list(const Derived& derived,
                     model::Index frame,
                     Selection& selection,
                     Dialog& dialog);

// How high the list is at that width.
float height_of_panels(const Derived& derived, model::Index frame, float width);

}  // namespace editor
