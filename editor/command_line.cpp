#include "editor/command_line.h"

#include "editor/reports.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <filesystem>
#include <ostream>

namespace editor {
namespace {

void add_check(CLI::App& app, std::string& project) {
    auto* check =
        app.add_subcommand("check", "Print what the program finds to say about a project");
    check->add_option("PROJECT", project, "The project's file")->required();
}

void add_schedule(CLI::App& app, std::string& project, std::string& folder) {
    auto* schedule =
        app.add_subcommand("schedule", "Write the cut, drill, fastener and bar schedules");
    schedule->add_option("PROJECT", project, "The project's file")->required();
    schedule->add_option("--out", folder, "The folder to write to; made when it is missing")
        ->required();
}

}  // namespace

int run_command_line(const std::vector<std::string>& arguments,
                     std::ostream& out,
                     std::ostream& err) {
    std::string project;
    std::string folder;
    CLI::App app{
        "Barwright: cabinet skeletons of bar stock, from layout to cut and drill schedules",
        "barwright"};
    app.set_version_flag("--version", "barwright " BARWRIGHT_VERSION);
    app.require_subcommand(1);
    add_schedule(app, project, folder);
    add_check(app, project);
    try {
        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 wants
        app.parse(std::move(reversed));
    } catch (const CLI::ParseError& asked) {
        const bool is_help = app.exit(asked, out, err) == 0;
        return static_cast<int>(is_help ? ExitStatus::fine : ExitStatus::not_possible);
    }
    const Streams streams{out, err};
    const auto status = app.got_subcommand("schedule") ? write_schedules(project, folder, streams)
                                                       : print_findings(project, streams);
    return static_cast<int>(status);
}

}  // namespace editor
