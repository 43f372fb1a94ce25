// The real openings that frames go into, as measured, and what they mean for the frame.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/dialog.h"

namespace editor {

void draw_opening_list(const Derived& derived, Dialog& dialog);

// As it would be drawn.
float height_of_openings(const Derived& derived);

}  // namespace editor
