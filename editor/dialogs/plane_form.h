// A new layout plane by its name, its axis and its place; the keyboard's way to what the hand in
// the view does.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "editor/view/sketch_state.h"

#include <string>

namespace editor {

struct PlaneForm {
    std::string frame;
    model::Plane plane;
    std::string trouble;
    bool is_fresh = true;
};

PlaneForm new_plane_form(const Derived& derived, const SketchState& sketch);

FormOutcome draw_plane_form(PlaneForm& form, const Derived& derived);

}  // namespace editor
