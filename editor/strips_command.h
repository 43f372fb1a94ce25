// The command that writes drill strips: paper at full size to wrap round the bars.
#pragma once

#include "editor/reports.h"

#include <string>

namespace CLI {
class App;
}

namespace editor {

// What `strips` was given, as text.
struct StripsArguments {
    std::string project;
    std::string file;
    std::string paper;         // empty: letter where the project shows inches, else a4
    std::string ruler_across;  // what the rulers measure; empty: what they say
    std::string ruler_down;
};

void add_strips(CLI::App& app, StripsArguments& arguments);

ExitStatus run_strips(const StripsArguments& arguments, Streams streams);

}  // namespace editor
