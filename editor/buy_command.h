// The command that writes what is to be bought, and the bars with their cuts.
#pragma once

#include "editor/reports.h"

#include <string>

namespace CLI {
class App;
}

namespace editor {

// What `buy` was given, as text.
struct BuyArguments {
    std::string project;
    std::string folder;
    std::string supplier;
    std::string paper;  // empty: letter where the project shows inches, else a4
};

void add_buy(CLI::App& app, BuyArguments& arguments);

ExitStatus run_buy(const BuyArguments& arguments, Streams streams);

}  // namespace editor
