// What is typed to find a command.
#pragma once

#include <cstddef>
#include <string>

namespace editor {

struct CommandFinder {
    std::string words;
    std::size_t chosen = 0;  // of what is found
    bool is_fresh = true;
};

}  // namespace editor
