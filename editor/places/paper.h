// On paper: the shop book, drill strips, and what has changed since the book was printed.
#pragma once

#include "editor/derived.h"
#include "editor/places/make.h"

namespace editor {

// Nothing where no paper has been tended yet.
void draw_paper(const Derived& derived, MakeState& state);

}  // namespace editor
