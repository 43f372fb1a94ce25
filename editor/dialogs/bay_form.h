// A bay between six planes that are chosen from lists.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "editor/view/sketch_state.h"

#include <string>

namespace editor {

struct BayForm {
    std::string frame;
    model::Bay bay;
    std::string trouble;
    bool is_fresh = true;
};

// The first cell between planes that no bay takes up; else all between the outermost planes.
BayForm new_bay_form(const Derived& derived, const SketchState& sketch);

FormOutcome draw_bay_form(BayForm& form, const Derived& derived);

}  // namespace editor
