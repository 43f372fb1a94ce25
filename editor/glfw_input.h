// The window library's callbacks, into the input queue.
#pragma once

#include "editor/input.h"

#include <filesystem>
#include <vector>

struct GLFWwindow;

namespace editor {

// What came in from the window since it was last looked at.
struct WindowEvents {
    InputQueue input;
    std::vector<std::filesystem::path> dropped;
    bool wants_to_close = false;
    bool has_come_back = false;  // the window to the front
    bool has_happened = false;   // anything that asks for a new frame
};

// Installs the callbacks; `events` must outlive the window. The window's user pointer is taken.
void listen_to(GLFWwindow* window, WindowEvents& events);

}  // namespace editor
