// The braces of a frame: how long they are, what is said of them, and the way to change them.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/selection.h"

namespace editor {

// Clicking a brace's length selects it; its name opens its form.
void draw_brace_list(const Derived& derived,
                     model::Index frame,
                     Selection& selection,
                     Dialog& dialog);

// How high the list is at that width.
float height_of_braces(const Derived& derived, model::Index frame, float width);

}  // namespace editor
