// Steps a frame over an obstacle: what it would change is told before it is done.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "editor/dialogs/frame_trial.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>

namespace editor {

struct StepForm {
    std::string frame;
    std::string obstacle;
    std::string clearance;  // empty: the obstacle's own or the shop's
    std::string heads;      // empty: as far as its heads and tails stand out
    std::string apart;      // empty: as its legs want
    model::StepOver edit;   // of the trial, with what was left empty
    std::optional<FrameTrial> trial;
    bool is_fresh = true;
};

// For the frame and the obstacle that findings name together, else for the first of each.
StepForm new_step_form(const Derived& derived);

// Whether the room has an obstacle that can be stepped over, and the project a frame.
bool can_step_over(const model::Project& project);

FormOutcome draw_step_form(StepForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue);

}  // namespace editor
