// What `barwright` understands on the command line.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace editor {

// What the program's exit status tells a script.
enum class ExitStatus {
    fine = 0,          // done, and no finding is an error
    has_errors = 1,    // done, but a finding is an error
    not_possible = 2,  // a project that cannot be read, a place that cannot be written, a wrong
                       // command
};

// Runs the command that the arguments (without the program's own name) ask for. Results go to
// `out`, what went wrong and its mend to `err`. Gives the exit status.
int run_command_line(const std::vector<std::string>& arguments,
                     std::ostream& out,
                     std::ostream& err);

}  // namespace editor
