// Lets the side of a frame lean with a wall of the room: what it would change is told before it is
// done.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "editor/dialogs/frame_trial.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>

namespace editor {

struct LeanForm {
    std::string frame;
    std::string wall;
    std::optional<FrameTrial> trial;
    bool is_fresh = true;
};

// For the frame and the wall that findings name together, else for the first of each.
LeanForm new_lean_form(const Derived& derived);

// Whether the room has a wall given by a profile, and the project a frame.
bool can_lean(const model::Project& project);

FormOutcome draw_lean_form(LeanForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue);

}  // namespace editor
