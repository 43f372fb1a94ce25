// Copies a frame, as it is or of the opposite hand.
#pragma once

#include "editor/dialogs/frame_form.h"
#include "model/catalogue/catalogue.h"

#include <string>

namespace editor {

struct CopyForm : FrameForm {
    std::string of_frame;  // whose name and place the fields were filled for
    std::string copy;
    model::Place origin{"0", "0", "0"};
    bool has_own_dimensions = false;
    bool is_mirrored = false;
};

// Behind all that stands in the van, along it.
CopyForm new_copy_form(const Derived& derived, const std::string& frame);

FormOutcome draw_copy_form(CopyForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue);

}  // namespace editor
