// The frames: what each is made of, to be changed section by section, its panels and its braces.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/places/section_choice.h"
#include "editor/selection.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>

namespace editor {

std::optional<Change> draw_frame_list(const Derived& derived,
                                      const model::Catalogue& catalogue,
                                      Selection& selection,
                                      SectionTyping& filter,
                                      Dialog& dialog);

// Down to the foot of what the first frame is made of first.
float height_of_first_stock();

// How high the list is at that width.
float height_of_frames(const Derived& derived, float width);

}  // namespace editor
