// Draws the dialog that is open, and does what it is answered with.
#pragma once

#include "editor/desk.h"

namespace editor {

void draw_dialog(Desk& desk);

}  // namespace editor
