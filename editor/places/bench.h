// At the bench: one piece at a time in large print, by the keyboard alone.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/places/make.h"
#include "editor/selection.h"

#include <optional>

namespace editor {

// Nothing where no bench has been tended yet. The change tells the saw what was done to its cuts.
std::optional<Change> draw_bench(const Derived& derived,
                                 const model::Catalogue& catalogue,
                                 MakeState& state,
                                 Selection& selection);

}  // namespace editor
