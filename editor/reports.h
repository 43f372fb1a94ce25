// The commands that only write and print: schedules into a folder, findings on the terminal.
#pragma once

#include "editor/command_line.h"

#include <filesystem>
#include <iosfwd>

namespace editor {

struct Streams {
    std::ostream& out;
    std::ostream& err;
};

// Writes every schedule of the project into the folder and prints what was written.
ExitStatus write_schedules(const std::filesystem::path& project_file,
                           const std::filesystem::path& folder,
                           Streams streams);

// Prints every finding, errors first.
ExitStatus print_findings(const std::filesystem::path& project_file, Streams streams);

}  // namespace editor
