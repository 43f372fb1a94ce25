// The command that writes all pieces into one file for other programs.
#pragma once

#include "editor/reports.h"

#include <filesystem>
#include <string>

namespace CLI {
class App;
}

namespace editor {

// What `export` was given, as text.
struct ExportArguments {
    std::string project;
    std::string file;
};

void add_export(CLI::App& app, ExportArguments& arguments);

// The file's ending chooses the format; one that is not known is refused before anything is read.
ExitStatus run_export(const ExportArguments& arguments, Streams streams);

}  // namespace editor
