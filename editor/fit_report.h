// The command `fit`: how far dimensions may go.
#pragma once

#include "editor/reports.h"

#include <filesystem>
#include <string>

namespace editor {

// Prints for each dimension that is a length, or for the one named, the intervals in which
// everything fits and what ends them. Not possible for a file that cannot be read or a name that is
// no dimension.
ExitStatus print_fit(const std::filesystem::path& project_file,
                     const std::string& dimension,
                     Streams streams);

}  // namespace editor
