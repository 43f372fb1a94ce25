// The bar along the bottom: what follows from all that, what the last edit changed, what is next.
#pragma once

#include "editor/desk.h"
#include "editor/kit/scopes.h"

namespace editor {

// Clicking the number of findings shows them.
void draw_consequences(const Area& area, Desk& desk, const Derived& derived);

// "depth 17 3/4 to 18 3/8" is the label's business; this adds what followed from it.
std::string last_edit_text(Desk& desk);

// What to do now.
std::string next_text(const Derived& derived);

}  // namespace editor
