#include "editor/command_line.h"

#include "editor/book_command.h"
#include "editor/buy_command.h"
#include "editor/dxf_command.h"
#include "editor/export_command.h"
#include "editor/fit_report.h"
#include "editor/picture.h"
#include "editor/pixel_size.h"
#include "editor/place.h"
#include "editor/places/shop_tables.h"
#include "editor/reports.h"
#include "editor/strips_command.h"
#include "editor/window.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <filesystem>
#include <ostream>

namespace editor {
namespace {

void add_check(CLI::App& app, std::string& project) {
    auto* check =
        app.add_subcommand("check", "Print what the program finds to say about a project");
    check->add_option("PROJECT", project, "The project's file")->type_name("FILE")->required();
}

void add_schedule(CLI::App& app, std::string& project, std::string& folder) {
    auto* schedule =
        app.add_subcommand("schedule", "Write the cut, drill, fastener and bar schedules");
    schedule->add_option("PROJECT", project, "The project's file")->type_name("FILE")->required();
    schedule->add_option("--out", folder, "The folder to write to; made when it is missing")
        ->type_name("FOLDER")
        ->required();
}

void add_fit(CLI::App& app, std::string& project, std::string& dimension) {
    auto* fit = app.add_subcommand("fit",
                                   "Print how far dimensions may go before something does "
                                   "not fit, and what stops them");
    fit->add_option("PROJECT", project, "The project's file")->type_name("FILE")->required();
    fit->add_option("--dimension", dimension,
                    "Only this one, as it is named in the project: \"counter height\"")
        ->type_name("NAME");
}

// What `picture` was given, as text.
struct PictureArguments {
    std::string project;
    std::string file;
    std::string size = "1600x1000";
    std::string from = "corner";
    bool as_line_drawing = false;
};

std::string problem_with_size(const std::string& text, const SizeRange& range) {
    return read_size(text, range) ? std::string() : size_help(range);
}

void add_picture(CLI::App& app, PictureArguments& arguments) {
    auto* picture = app.add_subcommand("picture", "Draw the skeleton into a PNG file");
    picture->add_option("PROJECT", arguments.project, "The project's file")
        ->type_name("FILE")
        ->required();
    picture->add_option("--out", arguments.file, "The PNG file to write")
        ->type_name("FILE")
        ->required();
    picture->add_option("--size", arguments.size, "Width and height in pixels: 1600x1000")
        ->type_name("SIZE")
        ->check([](const std::string& text) { return problem_with_size(text, picture_sizes); });
    picture->add_option("--from", arguments.from, "Where it is seen from")
        ->check(CLI::IsMember({"front", "left", "top", "corner"}));
    picture->add_flag("--lines", arguments.as_line_drawing,
                      "A line drawing for paper: black on white, hidden lines left out");
}

ExitStatus run_picture(const PictureArguments& arguments, Streams streams) {
    PictureLook look;
    look.size = read_size(arguments.size, picture_sizes).value_or(look.size);
    look.from = read_view_from(arguments.from).value_or(look.from);
    look.as_line_drawing = arguments.as_line_drawing;
    return write_picture(arguments.project, arguments.file, look, streams);
}

// What `edit` was given, as text.
struct EditArguments {
    std::string project;
    std::string size;
    std::string screenshot;
    std::string place;
    std::string sheet;
    std::string choose;
    bool is_dark = false;
    bool reports_state = false;
    int samples = 4;
};

std::vector<std::string> names_of_places() {
    std::vector<std::string> names;
    for (const auto& row : place_rows) names.emplace_back(row.name);
    return names;
}

std::vector<std::string> names_of_sheets() {
    std::vector<std::string> names;
    for (const auto table : shop_tables) names.emplace_back(name_of(table));
    return names;
}

void add_edit(CLI::App& app, EditArguments& arguments) {
    auto* edit = app.add_subcommand("edit", "Open a project in the window");
    edit->add_option("PROJECT", arguments.project, "The project's file; an empty desk without")
        ->type_name("FILE");
    edit->add_option("--size", arguments.size, "The window's size in pixels: 1600x1000")
        ->type_name("SIZE")
        ->check([](const std::string& text) { return problem_with_size(text, window_sizes); });
    edit->add_option("--samples", arguments.samples,
                     "Anti-aliasing of the view, 0 to 16; 0 for none")
        ->type_name("COUNT")
        ->check(CLI::Range(0, 16));
    auto* shot = edit->add_option("--screenshot", arguments.screenshot,
                                  "Draw the window once, write it to this PNG file and end")
                     ->type_name("FILE");
    edit->add_option("--place", arguments.place, "For the screenshot: the place of the job")
        ->type_name("PLACE")
        ->check(CLI::IsMember(names_of_places()))
        ->needs(shot);
    edit->add_option("--sheet", arguments.sheet, "For the screenshot: the sheet of Make")
        ->type_name("SHEET")
        ->check(CLI::IsMember(names_of_sheets()))
        ->needs(shot);
    edit->add_option("--choose", arguments.choose,
                     "For the screenshot: a member to choose, or a joint: \"post left + rail top\"")
        ->type_name("NAME")
        ->needs(shot);
    edit->add_flag("--dark", arguments.is_dark, "Begin in the dark look");
    edit->add_flag("--report-state", arguments.reports_state,
                   "Print what the window shows as lines of JSON, for scripts that drive it");
}

ExitStatus run_edit(const EditArguments& arguments, Streams streams) {
    WindowOptions options{.place = arguments.place,
                          .sheet = arguments.sheet,
                          .choose = arguments.choose,
                          .is_dark = arguments.is_dark,
                          .reports_state = arguments.reports_state,
                          .samples = arguments.samples};
    options.size = read_size(arguments.size, window_sizes).value_or(options.size);
    if (!arguments.project.empty()) options.project = arguments.project;
    if (!arguments.screenshot.empty()) options.screenshot = arguments.screenshot;
    return run_window(options, streams.out, streams.err);
}

// Names a first word that is neither a command nor an option; empty when it is one.
std::string unknown_command(const CLI::App& app, const std::vector<std::string>& arguments) {
    if (arguments.empty() || app.get_option_no_throw(arguments.front()) != nullptr) return {};
    std::string names;
    for (const auto* command : app.get_subcommands([](const CLI::App*) { return true; })) {
        if (command->get_name() == arguments.front()) return {};
        names += (names.empty() ? "" : ", ") + command->get_name();
    }
    return "there is no command " + arguments.front() + "; there are " + names + ", and --help";
}

// What could not be written must not pass for done.
int status_of_output(int status, std::ostream& out, std::ostream& err) {
    out.flush();
    if (out) return status;
    err << "barwright: the output could not be written; is the disk full?\n";
    return static_cast<int>(ExitStatus::not_possible);
}

int run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err) {
    std::string project;
    std::string folder;
    std::string dimension;
    PictureArguments picture;
    EditArguments edit;
    ExportArguments exported;
    BuyArguments buy;
    StripsArguments strips;
    DxfArguments dxf;
    BookArguments book;
    CLI::App app{
        "Barwright: cabinet skeletons of bar stock, from layout to cut and drill schedules",
        "barwright"};
    app.set_version_flag("--version", "barwright " BARWRIGHT_VERSION);
    app.require_subcommand(1);
    add_edit(app, edit);
    add_schedule(app, project, folder);
    add_check(app, project);
    add_fit(app, project, dimension);
    add_picture(app, picture);
    add_export(app, exported);
    add_buy(app, buy);
    add_strips(app, strips);
    add_dxf(app, dxf);
    add_book(app, book);
    if (const auto unknown = unknown_command(app, arguments); !unknown.empty()) {
        err << "barwright: " << unknown << '\n';
        return static_cast<int>(ExitStatus::not_possible);
    }
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
    if (app.got_subcommand("export")) return static_cast<int>(run_export(exported, streams));
    if (app.got_subcommand("buy")) return static_cast<int>(run_buy(buy, streams));
    if (app.got_subcommand("strips")) return static_cast<int>(run_strips(strips, streams));
    if (app.got_subcommand("dxf")) return static_cast<int>(run_dxf(dxf, streams));
    if (app.got_subcommand("book")) return static_cast<int>(run_book(book, streams));
    if (app.got_subcommand("fit")) return static_cast<int>(print_fit(project, dimension, streams));
    const auto status = app.got_subcommand("schedule") ? write_schedules(project, folder, streams)
                                                       : print_findings(project, streams);
    return static_cast<int>(status);
}

}  // namespace

int run_command_line(const std::vector<std::string>& arguments,
                     std::ostream& out,
                     std::ostream& err) {
    return status_of_output(run(arguments, out, err), out, err);
}

}  // namespace editor
