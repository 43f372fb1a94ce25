// The whole window, one frame of it: places every panel and makes the changes that they ask for.
#pragma once

#include "editor/desk.h"

namespace editor {

// Between ImGui's new frame and its render. Calls neither the window nor OpenGL.
void draw_screen(Desk& desk);

}  // namespace editor
