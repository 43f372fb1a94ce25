// Make, at the saw: what the bench has cut and the saw does not know of, and the bars.
#pragma once

#include "editor/places/make.h"

#include <optional>

namespace editor {

std::optional<Change> draw_saw_place(const Derived& derived,
                                     const model::Catalogue& catalogue,
                                     MakeState& state,
                                     Selection& selection);

}  // namespace editor
