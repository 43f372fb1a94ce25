// Splits a member at a plane that it passes.
#pragma once

#include "editor/dialogs/frame_form.h"
#include "model/catalogue/catalogue.h"

#include <string>

namespace editor {

struct SplitForm : FrameForm {
    std::string member;
    std::string plane;
};

// At the first plane between its ends.
SplitForm new_split_form(const Derived& derived,
                         const std::string& frame,
                         const std::string& member);

FormOutcome draw_split_form(SplitForm& form,
                            const Derived& derived,
                            const model::Catalogue& catalogue);

}  // namespace editor
