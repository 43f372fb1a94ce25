#include "editor/command_line.h"

#include "editor/picture.h"
#include "editor/reports.h"
#include "editor/window.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <ostream>
#include <system_error>

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

// What `edit` was given, as text.
struct EditArguments {
    std::string project;
    std::string size;
    std::string screenshot;
    std::string place;
    std::string choose;
    bool reports_state = false;
    int samples = 4;
};

void add_edit(CLI::App& app, EditArguments& arguments) {
    auto* edit = app.add_subcommand("edit", "Open a project in the window");
    edit->add_option("PROJECT", arguments.project, "The project's file; an empty desk without");
    edit->add_option("--size", arguments.size, "The window's size in pixels: 1600x1000");
    edit->add_option("--samples", arguments.samples, "Anti-aliasing of the view; 0 for none")
        ->check(CLI::Range(0, 16));
    auto* shot = edit->add_option("--screenshot", arguments.screenshot,
                                  "Draw the window once, write it to this PNG file and end");
    edit->add_option("--place", arguments.place, "For the screenshot: the place of the job")
        ->check(CLI::IsMember({"lay out", "buy", "make"}))
        ->needs(shot);
    edit->add_option("--choose", arguments.choose, "For the screenshot: a member to choose")
        ->needs(shot);
    edit->add_flag("--report-state", arguments.reports_state,
                   "Print what the window shows as lines of JSON, for scripts that drive it");
}

// "1600x1000"; nothing else.
bool read_size(const std::string& text, WindowOptions& options) {
    if (text.empty()) return true;
    const char* at = text.data();
    const char* end = at + text.size();
    const auto width = std::from_chars(at, end, options.width);
    if (width.ec != std::errc{} || width.ptr == end || *width.ptr != 'x') return false;
    const auto height = std::from_chars(width.ptr + 1, end, options.height);
    const auto is_sound = [](int pixels) { return pixels >= 320 && pixels <= 16'384; };
    return height.ec == std::errc{} && height.ptr == end && is_sound(options.width) &&
           is_sound(options.height);
}

ExitStatus run_edit(const EditArguments& arguments, Streams streams) {
    WindowOptions options{.place = arguments.place,
                          .choose = arguments.choose,
                          .reports_state = arguments.reports_state,
                          .samples = arguments.samples};
    if (!read_size(arguments.size, options)) {
        streams.err << "barwright: --size " << arguments.size
                    << ": write width and height in pixels, like 1600x1000\n";
        return ExitStatus::not_possible;
    }
    if (!arguments.project.empty()) options.project = arguments.project;
    if (!arguments.screenshot.empty()) options.screenshot = arguments.screenshot;
    return run_window(options, streams.out, streams.err);
}

}  // namespace

int run_command_line(const std::vector<std::string>& arguments,
                     std::ostream& out,
                     std::ostream& err) {
    std::string project;
    std::string folder;
    PictureArguments picture;
    EditArguments edit;
    CLI::App app{
        "Barwright: cabinet skeletons of bar stock, from layout to cut and drill schedules",
        "barwright"};
    app.set_version_flag("--version", "barwright " BARWRIGHT_VERSION);
    app.require_subcommand(1);
    add_edit(app, edit);
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
    if (app.got_subcommand("edit")) return static_cast<int>(run_edit(edit, streams));
    const auto status = app.got_subcommand("schedule") ? write_schedules(project, folder, streams)
                                                       : print_findings(project, streams);
    return static_cast<int>(status);
}

}  // namespace editor
