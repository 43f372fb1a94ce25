// The program's icon for its window; the same drawing as desktop/barwright.svg.
#pragma once

struct GLFWwindow;

namespace editor {

// Does nothing where the system shows no icons of windows.
void set_window_icon(GLFWwindow* window);

}  // namespace editor
