#include "editor/buy_command.h"

#include "editor/assets_path.h"
#include "editor/open_project.h"
#include "editor/paper_names.h"
#include "model/buying/buying_files.h"
#include "model/room/read_scan.h"
#include "model/room/resolve_in_room.h"

#include <CLI/CLI.hpp>

#include <filesystem>
#include <ostream>
#include <vector>

namespace editor {
namespace {

engine::Result<model::BuyingFiles> made_files(const BuyArguments& arguments) {
    const std::filesystem::path file = arguments.project;
    const auto project = open_project(file);
    if (!project) return project.error();
    const auto catalogue = open_catalogue();
    if (!catalogue) return catalogue.error();
    const auto resolved = model::resolve_in_room(*project, *catalogue,
                                                 model::read_scans(*project, file.parent_path()));
    const auto library = model::read_price_library(*project, *catalogue, file);
    return model::buying_files(
        *project, *catalogue, resolved, library,
        {.supplier = arguments.supplier, .paper = paper_for(*project, arguments.paper)});
}

}  // namespace

void add_buy(CLI::App& app, BuyArguments& arguments) {
    auto* buy = app.add_subcommand("buy", "Write what is to be bought, and each bar with its cuts");
    buy->add_option("PROJECT", arguments.project, "The project's file")
        ->type_name("FILE")
        ->required();
    buy->add_option("--out", arguments.folder, "The folder to write to; made when it is missing")
        ->type_name("FOLDER")
        ->required();
    buy->add_option("--supplier", arguments.supplier,
                    "Buy from this one, as it is named in the project")
        ->type_name("NAME");
    buy->add_option("--paper", arguments.paper, "What the bars are printed on")
        ->check(CLI::IsMember(paper_names(), CLI::ignore_case));
}

ExitStatus run_buy(const BuyArguments& arguments, Streams streams) {
    const auto made = made_files(arguments);
    if (!made) {
        streams.err << "barwright: " << engine::to_text(made.error()) << "\n";
        return ExitStatus::not_possible;
    }
    const auto written = model::write_buying(made->files, arguments.folder);
    if (!written) {
        streams.err << "barwright: " << engine::to_text(written.error()) << "\n";
        return ExitStatus::not_possible;
    }
    for (const auto& line : made->words) streams.out << line << "\n";
    streams.out << "written to " << arguments.folder << ":";
    for (const auto& name : *written) streams.out << " " << name;
    streams.out << "\n";
    if (written->size() < made->files.size()) {
        streams.out << model::buying_names.back() << " is there already and is kept\n";
    }
    if (!made->lacks_something) return ExitStatus::fine;
    streams.err << "barwright: the list is written, but lacks something: read the lines above, and "
                   "fill in prices_to_fill_in.csv as a supplier's list\n";
    return ExitStatus::has_errors;
}

}  // namespace editor
