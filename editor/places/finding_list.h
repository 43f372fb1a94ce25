// What the program has to say: amber for what to look at, red for what is wrong.
#pragma once

#include "editor/derived.h"
#include "editor/selection.h"

namespace editor {

// Clicking a finding selects what it concerns.
void draw_finding_list(const Derived& derived, Selection& selection);

// How high the list is at that width.
float height_of_findings(const Derived& derived, float width);

}  // namespace editor
