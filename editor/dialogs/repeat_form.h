// Repeats a bay along an axis.
#pragma once

#include "editor/dialogs/frame_form.h"
#include "model/catalogue/catalogue.h"

#include <string>

namespace editor {

struct RepeatForm : FrameForm {
    std::string bay;
    model::Axis axis = model::Axis::x;
    std::string times = "1";
    std::string pitch;  // empty: as wide as the bay
    bool with_panels = true;
    bool with_loads = false;
};

// Whether some frame has a bay.
bool has_bays(const model::Project& project);

RepeatForm new_repeat_form(const Derived& derived, const std::string& frame);

FormOutcome draw_repeat_form(RepeatForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue);

}  // namespace editor
