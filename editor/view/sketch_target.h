// What the hand that is at work points at: a line, a node, a space, a place on a line.
#pragma once

#include "editor/view/sketch_hand.h"
#include "editor/view/sketch_trial.h"

namespace editor {

inline constexpr double node_reach = 13.0;  // design pixels

SketchTarget target_at(const SketchScene& scene,
                       const SketchDesk& desk,
                       const SketchPointer& pointer);

}  // namespace editor
