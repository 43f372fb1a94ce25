#include "editor/shortcuts.h"

#include "editor/keys.h"

#include <imgui.h>

#include <string_view>

namespace editor {
namespace {

std::string key_name(int code) {
    switch (code) {
        case key::escape:
            return "Esc";
        case key::remove:
            return "Delete";
        case key::f1:
            return "F1";
        case key::down:
            return "Down";
        case key::up:
            return "Up";
        case key::equal:
            return "+";
        default:
            return std::string(1, static_cast<char>(code));
    }
}

// On many keyboards + is the shifted = and has no key of its own.
bool needs_shift_somewhere(int code) { return code == key::equal; }

}  // namespace

std::string shortcut_text(const Shortcut& shortcut) {
    if (shortcut.key == 0) return {};
    return std::string(shortcut.control ? "Ctrl+" : "") + (shortcut.shift ? "Shift+" : "") +
           key_name(shortcut.key);
}

bool belongs_to_text(const Shortcut& keys) {
    if (keys.key == key::f1) return false;
    if (!keys.control) return true;
    constexpr std::string_view of_text = "ACVXYZ";
    return keys.key < 128 && of_text.find(static_cast<char>(keys.key)) != std::string_view::npos;
}

bool is_pressed_now(const Shortcut& keys) {
    const ImGuiIO& io = ImGui::GetIO();
    const bool is_shift_right = keys.shift == io.KeyShift || needs_shift_somewhere(keys.key);
    return keys.key != 0 && keys.control == io.KeyCtrl && is_shift_right && !io.KeyAlt &&
           ImGui::IsKeyPressed(keys.key, false);
}

}  // namespace editor
