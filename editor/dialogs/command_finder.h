// Everything that can be done, found by words: for the keyboard, and for who knows what they want
// but not where it is.
#pragma once

#include "editor/desk.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

// The ids of the commands that all the words occur in - in what they do, or in their menu's name -
// in the order of the table.
std::vector<std::string_view> found_commands(std::string_view words);

// Gives the command to run; empty while there is none. Closes by itself.
struct FinderOutcome {
    std::string_view command;
    bool is_cancelled = false;
};

FinderOutcome draw_command_finder(CommandFinder& finder, const Desk& desk);

}  // namespace editor
