#include "editor/command_line.h"

#include "editor/picture.h"
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

// What `picture` was given, as text.
struct PictureArguments {
    std::string project;
    std::string file;
    std::string size = "1600x1000";
    std::string from = "corner";
};

std::string problem_with_size(const std::string& text) {
    if (read_picture_size(text)) return {};
    return "write width and height in pixels, each from 16 to 8192, like 1600x1000";
}

void add_picture(CLI::App& app, PictureArguments& arguments) {
    auto* picture = app.add_subcommand("picture", "Draw the skeleton into a PNG file");
    picture->add_option("PROJECT", arguments.project, "The project's file")->required();
    picture->add_option("--out", arguments.file, "The PNG file to write")->required();
    picture->add_option("--size", arguments.size, "Width and height in pixels: 1600x1000")
        ->check(problem_with_size);
    picture->add_option("--from", arguments.from, "Where it is seen from")
        ->check(CLI::IsMember({"front", "left", "top", "corner"}));
}

ExitStatus run_picture(const PictureArguments& arguments, Streams streams) {
    PictureLook look;
    look.size = read_picture_size(arguments.size).value_or(look.size);
    look.from = read_view_from(arguments.from).value_or(look.from);
    return write_picture(arguments.project, arguments.file, look, streams);
}

}  // namespace

int run_command_line(const std::vector<std::string>& arguments,
                     std::ostream& out,
                     std::ostream& err) {
    std::string project;
    std::string folder;
    PictureArguments picture;
    CLI::App app{
        "Barwright: cabinet skeletons of bar stock, from layout to cut and drill schedules",
        "barwright"};
    app.set_version_flag("--version", "barwright " BARWRIGHT_VERSION);
    app.require_subcommand(1);
    add_schedule(app, project, folder);
    add_check(app, project);
    add_picture(app, picture);
    try {
        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 wants
        app.parse(std::move(reversed));
    } catch (const CLI::ParseError& asked) {
        const bool is_help = app.exit(asked, out, err) == 0;
        return static_cast<int>(is_help ? ExitStatus::fine : ExitStatus::not_possible);
    }
    const Streams streams{out, err};
    if (app.got_subcommand("picture")) return static_cast<int>(run_picture(picture, streams));
    const auto status = app.got_subcommand("schedule") ? write_schedules(project, folder, streams)
                                                       : print_findings(project, streams);
    return static_cast<int>(status);
}

}  // namespace editor
