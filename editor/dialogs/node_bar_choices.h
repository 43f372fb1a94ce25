// What is chosen from lists in the form of a brace or of a leaning member.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/node_bar_form.h"
#include "model/catalogue/catalogue.h"

namespace editor {

// The face, and the two nodes on it. Gives whether another one was chosen.
template <class Bar>
bool draw_place_choices(Bar& bar, const Derived& derived, const model::Frame& frame);

// What of the project is of the right form first, then the catalogue's.
template <class Bar>
void draw_stock_choice(NodeBarForm<Bar>& form,
                       const Derived& derived,
                       const model::Catalogue& catalogue);

// Whether one of the lists is open.
bool is_choosing_for_node_bar();

// What a first one is made of, as `draw_stock_choice` would choose it: a stock of the project, that
// of the frame's members before others, else a section of the catalogue about 1 in wide and 1/8 in
// thick.
template <class Bar>
void choose_usual_stock(NodeBarForm<Bar>& form,
                        const Derived& derived,
                        const model::Catalogue& catalogue);

}  // namespace editor
