// Takes a plane out of a frame with what stands on it, or a bay with what is in it.
#pragma once

#include "editor/dialogs/frame_form.h"
#include "model/catalogue/catalogue.h"

#include <string>

namespace editor {

struct TakeOutForm : FrameForm {
    bool is_of_bay = false;
    std::string name;  // of the plane or the bay
    bool with_bars = true;
    std::string gone;  // names of what goes
};

TakeOutForm new_take_out_form(const Derived& derived, const std::string& frame, bool is_of_bay);

FormOutcome draw_take_out_form(TakeOutForm& form,
                               const Derived& derived,
                               const model::Catalogue& catalogue);

}  // namespace editor
