// Mirrors bars of a frame about the middle between two of its planes.
#pragma once

#include "editor/dialogs/frame_form.h"
#include "model/catalogue/catalogue.h"

#include <array>
#include <string>
#include <vector>

namespace editor {

struct MirrorForm : FrameForm {
    model::Axis axis = model::Axis::x;
    std::vector<std::string> chosen;     // bars that were chosen in the view
    bool is_of_all = true;               // or of those alone
    std::array<std::string, 2> between;  // empty: the outermost planes
};

MirrorForm new_mirror_form(const Derived& derived,
                           const std::string& frame,
                           std::vector<std::string> chosen);

FormOutcome draw_mirror_form(MirrorForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue);

}  // namespace editor
