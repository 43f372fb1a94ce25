// A panel: which side of which bay, its sheet, how it is held, and what is cut out of it.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "model/catalogue/catalogue.h"

#include <string>

namespace editor {

struct PanelForm {
    std::string frame;
    std::string instead_of;  // the panel that is changed; empty for a new one
    model::Panel panel;      // as typed so far
    std::string trouble;
    bool is_fresh = true;
};

PanelForm panel_form(const std::string& frame, const model::Panel& panel);

// A new one on the front of the frame's first bay, with a name that is free.
PanelForm new_panel_form(const Derived& derived, const std::string& frame);

FormOutcome draw_panel_form(PanelForm& form,
                            const Derived& derived,
                            const model::Catalogue& catalogue);

}  // namespace editor
