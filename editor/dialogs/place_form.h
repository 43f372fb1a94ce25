// Where a frame stands in the room, and which way round: what would then be wrong is told before it
// is put there.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "editor/dialogs/frame_trial.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>

namespace editor {

struct PlaceForm {
    std::string frame;
    model::Place stated;  // in the project
    model::Place shown;   // that, with the value of a dimension for its name
    model::Place origin;  // in the fields
    int quarter_turns = 0;
    std::optional<FrameTrial> trial;
    bool is_fresh = true;
};

// Of the named frame, or of the first one where there is none of that name.
PlaceForm new_place_form(const model::Project& project, const std::string& frame);

FormOutcome draw_place_form(PlaceForm& form,
                            const Derived& derived,
                            const model::Catalogue& catalogue);

}  // namespace editor
