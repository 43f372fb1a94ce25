#include "editor/dxf_command.h"

#include "editor/worked_out_file.h"
#include "model/book/mark_dxf.h"

#include <CLI/CLI.hpp>

#include <ostream>

namespace editor {

void add_dxf(CLI::App& app, DxfArguments& arguments) {
    auto* dxf = app.add_subcommand(
        "dxf", "Write each part of sheet and each unrolled piece at full size as DXF");
    dxf->add_option("PROJECT", arguments.project, "The project's file")
        ->type_name("FILE")
        ->required();
    dxf->add_option("--out", arguments.folder, "The folder to write to; made when it is missing")
        ->type_name("FOLDER")
        ->required();
}

ExitStatus run_dxf(const DxfArguments& arguments, Streams streams) {
    const auto refuse = [&](const engine::Error& error) {
        streams.err << "barwright: " << engine::to_text(error) << "\n";
        return ExitStatus::not_possible;
    };
    const auto made = worked_out_file(arguments.project);
    if (!made) return refuse(made.error());
    const auto files =
        model::dxf_files(made->project, made->catalogue, made->resolved, made->has_errors);
    if (!files) return refuse(files.error());
    if (const auto written = model::write_all(*files, arguments.folder); !written)
        return refuse(written.error());
    streams.out << "written to " << arguments.folder << ": " << files->size()
                << (files->size() == 1 ? " file" : " files") << ", one for each mark and hand\n";
    if (!made->has_errors) return ExitStatus::fine;
    streams.err << "barwright: the files are written, but the project is not fit to cut from: "
                   "run `barwright check` and mend the errors first\n";
    return ExitStatus::has_errors;
}

}  // namespace editor
