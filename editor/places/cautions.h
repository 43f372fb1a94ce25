// What to take care of where the work begins: one line, and the rest while the pointer rests on it.
#pragma once

#include "model/schedule/cautions.h"

namespace editor {

using model::Caution;
using model::caution_of;
using model::Work;

void draw_caution(Work work);

}  // namespace editor
