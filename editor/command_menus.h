// The parts of the table of commands, in its order.
#pragma once

#include "editor/commands.h"

namespace editor {

std::span<const Command> project_commands();
std::span<const Command> edit_commands();
std::span<const Command> room_commands();
std::span<const Command> frame_commands();
std::span<const Command> view_commands();
std::span<const Command> place_commands();

bool always(const Desk& desk);
bool has_frames(const Desk& desk);

}  // namespace editor
