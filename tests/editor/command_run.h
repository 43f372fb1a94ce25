// The command line as somebody runs it: its exit status and what it says.
#pragma once

#include "editor/command_line.h"

#include <sstream>
#include <string>
#include <vector>

namespace tests {

struct CommandRun {
    int status = -1;
    std::string out;
    std::string err;
};

inline CommandRun run(const std::vector<std::string>& arguments) {
    std::ostringstream out;
    std::ostringstream err;
    const int status = editor::run_command_line(arguments, out, err);
    return {status, out.str(), err.str()};
}

}  // namespace tests
