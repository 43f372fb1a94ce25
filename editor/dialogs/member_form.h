// A member stated by lists: the two planes it lies on, from which plane to which, and what it is
// cut from. What the hand in the view does with the pointer, by the keyboard alone.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "editor/view/sketch_state.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>

namespace editor {

struct MemberForm {
    std::string frame;
    GridSegment segment;  // by the frame's grid of planes
    std::string stock;
    std::string trouble;
    std::optional<SketchTrial> trial;
    bool is_fresh = true;
};

// On the first line of the frame on which no member lies yet.
MemberForm new_member_form(const Derived& derived, const SketchState& sketch);

FormOutcome draw_member_form(MemberForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue);

}  // namespace editor
