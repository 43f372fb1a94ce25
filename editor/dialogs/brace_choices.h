// What is chosen from lists in the form of a brace.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/brace_form.h"
#include "model/catalogue/catalogue.h"

#include <string>

namespace editor {

// The face, and the two nodes on it.
void draw_brace_place(model::Diagonal& diagonal, const Derived& derived, const model::Frame& frame);

// The project's flat bar first, then the catalogue's.
void draw_brace_bar(BraceForm& form, const Derived& derived, const model::Catalogue& catalogue);

void draw_side_and_ends(model::Diagonal& diagonal);

// Whether one of the lists is open.
bool is_choosing_for_brace();

// The flat bar that a first brace is made of, as `draw_brace_bar` would choose it: a stock of the
// project, else a section of the catalogue about 1 in wide and 1/8 in thick.
void choose_usual_bar(BraceForm& form, const Derived& derived, const model::Catalogue& catalogue);

}  // namespace editor
