// Everything that can be done by menu or key, as one table: menus, keys, help and tests read it.
#pragma once

#include "editor/desk.h"
#include "editor/shortcuts.h"

#include <span>
#include <string>
#include <string_view>

namespace editor {

enum class Menu { project, edit, room, frame, view, none };

struct Command {
    std::string_view id;  // stable: used by tests and scripts
    std::string_view label;
    Menu menu = Menu::none;
    Shortcut keys;
    bool (*enabled)(const Desk&) = nullptr;
    void (*run)(Desk&) = nullptr;
    Shortcut also{};  // a second way, not shown
};

std::span<const Command> commands();
const Command* find_command(std::string_view id);

// Does nothing when the command is not there or not enabled.
void run_command(Desk& desk, std::string_view id);

// Runs what the keys of this frame ask for. While a text is typed, plain keys and the text's own
// shortcuts (Ctrl with A, C, V, X, Y, Z) belong to the text; a dialog takes all.
void run_pressed_commands(Desk& desk);

}  // namespace editor
