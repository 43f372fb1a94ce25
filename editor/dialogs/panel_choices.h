// What is chosen from lists in the form of a panel.
#pragma once

#include "editor/derived.h"
#include "model/catalogue/catalogue.h"

#include <string>

namespace editor {

void draw_bay_and_face(model::Panel& panel, const Derived& derived, const std::string& frame);
void draw_material_choice(model::Panel& panel, const model::Catalogue& catalogue);
void draw_fit_and_use(model::Panel& panel);
void draw_rivet_choice(model::Panel& panel, const model::Catalogue& catalogue);

// Whether one of the lists is open.
bool is_choosing_for_panel();

}  // namespace editor
