// What help keeps while the window is open: mends of findings, and how far the first steps are.
#pragma once

#include "editor/mend_board.h"

namespace editor {

struct HelpState {
    MendBoard mends;
    bool has_dismissed_steps = true;  // the card of first steps; kept with the window's look
    bool has_adjusted = false;        // a size of the project that is open
    bool has_exported = false;        // the schedules of the project that is open
};

}  // namespace editor
