// The command that writes each part at full size for machines that cut and mark.
#pragma once

#include "editor/reports.h"

#include <string>

namespace CLI {
class App;
}

namespace editor {

struct DxfArguments {
    std::string project;
    std::string folder;
};

void add_dxf(CLI::App& app, DxfArguments& arguments);

ExitStatus run_dxf(const DxfArguments& arguments, Streams streams);

}  // namespace editor
