// Keys that run a command.
#pragma once

#include <string>

namespace editor {

struct Shortcut {
    int key = 0;  // as in keys.h; 0: none
    bool control = false;
    bool shift = false;

    bool operator==(const Shortcut&) const = default;
};

// "Ctrl+Shift+S"; empty for none.
std::string shortcut_text(const Shortcut& shortcut);

// Whether a text that is typed keeps them for itself: plain keys, and Ctrl with A, C, V, X, Y or Z.
bool belongs_to_text(const Shortcut& keys);

// In this frame.
bool is_pressed_now(const Shortcut& keys);

}  // namespace editor
