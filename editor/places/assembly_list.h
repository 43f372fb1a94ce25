// The steps in which the frames are put together: one of them with all that is done in it.
#pragma once

#include "editor/derived.h"
#include "editor/places/make.h"
#include "editor/selection.h"

namespace editor {

// Choosing a step selects what is put on in it.
void draw_assembly_list(const Derived& derived,
                        const model::Catalogue& catalogue,
                        MakeState& state,
                        Selection& selection);

// So many steps on or back, as far as there are any.
void choose_step(const Derived& derived,
                 const model::Catalogue& catalogue,
                 MakeState& state,
                 Selection& selection,
                 int by);

// So many joints of that step on or back; from none the first, or the last one back. Selects what
// meets there.
void choose_joint(const Derived& derived,
                  const model::Catalogue& catalogue,
                  MakeState& state,
                  Selection& selection,
                  int by);

}  // namespace editor
