#include "editor/commands.h"

#include "editor/command_menus.h"
#include "editor/keys.h"

#include <imgui.h>

#include <algorithm>
#include <vector>

namespace editor {
namespace {

std::vector<Command> all_commands() {
    std::vector<Command> table;
    for (const auto part : {project_commands(), edit_commands(), room_commands(), frame_commands(),
                            view_commands(), place_commands()}) {
        table.insert(table.end(), part.begin(), part.end());
    }
    return table;
}

}  // namespace

bool always(const Desk&) { return true; }
bool has_frames(const Desk& desk) { return !project_of(desk).frames.empty(); }

std::span<const Command> commands() {
    static const std::vector<Command> table = all_commands();
    return table;
}

const Command* find_command(std::string_view id) {
    const auto table = commands();
    const auto at = std::ranges::find(table, id, &Command::id);
    return at == table.end() ? nullptr : &*at;
}

void run_command(Desk& desk, std::string_view id) {
    const Command* command = find_command(id);
    if (command != nullptr && command->enabled(desk)) command->run(desk);
}

void run_pressed_commands(Desk& desk) {
    if (is_open(desk.ui.dialog)) return;
    const bool is_typing = ImGui::GetIO().WantTextInput;
    for (const auto& command : commands()) {
        const auto& keys = is_pressed_now(command.keys) ? command.keys : command.also;
        if (!is_pressed_now(keys) || (is_typing && belongs_to_text(keys))) continue;
        run_command(desk, command.id);
        return;
    }
}

}  // namespace editor
