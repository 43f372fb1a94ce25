// The braces and leaning members of a frame: how long they are and how they are cut, what is said
// of them, and the way to change them.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/selection.h"

namespace editor {

// Clicking the size of one selects it; its name opens its form.
void draw_node_bar_list(const Derived& derived,
                        model::Index frame,
                        Selection& selection,
                        Dialog& dialog);

// How high the list is at that width.
float height_of_node_bars(const Derived& derived, model::Index frame, float width);

}  // namespace editor
