#include "editor/export_command.h"

#include "editor/open_project.h"
#include "engine/files/whole_file.h"
#include "model/room/read_scan.h"
#include "model/room/resolve_in_room.h"
#include "model/schedule/export.h"
#include "model/schedule/findings.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <ostream>

namespace editor {
namespace {

struct Exported {
    std::string bytes;
    std::size_t pieces = 0;
    bool has_errors = false;
};

engine::Result<Exported> exported(const std::filesystem::path& project_file,
                                  model::ExportFormat format) {
    const auto project = open_project(project_file);
    if (!project) return project.error();
    const auto catalogue = open_catalogue();
    if (!catalogue) return catalogue.error();
    const auto resolved = model::resolve_in_room(
        *project, *catalogue, model::read_scans(*project, project_file.parent_path()));
    auto bytes = model::exported(*project, *catalogue, resolved, format);
    if (!bytes) return bytes.error();
    const auto findings = model::all_findings(*project, *catalogue, resolved);
    const bool has_errors = std::ranges::any_of(findings, [](const model::Finding& finding) {
        return finding.severity == model::Severity::error;
    });
    return Exported{std::move(bytes).value(), resolved.pieces.size(), has_errors};
}

ExitStatus refusal(std::ostream& err, const engine::Error& error) {
    err << "barwright: " << engine::to_text(error) << "\n";
    return ExitStatus::not_possible;
}

}  // namespace

void add_export(CLI::App& app, ExportArguments& arguments) {
    auto* command = app.add_subcommand("export", "Write all pieces into a file for other programs");
    command->add_option("PROJECT", arguments.project, "The project's file")
        ->type_name("FILE")
        ->required();
    command
        ->add_option("--out", arguments.file,
                     "The file to write: .step for exact solids; .glb, .stl or .obj for "
                     "triangles")
        ->type_name("FILE")
        ->required();
}

ExitStatus run_export(const ExportArguments& arguments, Streams streams) {
    const std::filesystem::path file = arguments.file;
    const auto format = model::export_format(file.extension().string());
    if (!format) {
        streams.err << "barwright: " << arguments.file
                    << ": its ending tells no format; end its name in .step, .glb, .stl or .obj\n";
        return ExitStatus::not_possible;
    }
    const auto made = exported(arguments.project, *format);
    if (!made) return refusal(streams.err, made.error());
    if (const auto written = engine::write_whole_file(file, made->bytes); !written)
        return refusal(streams.err, written.error());
    streams.out << "written to " << arguments.file << ": " << made->pieces
                << (made->pieces == 1 ? " piece" : " pieces") << ", " << made->bytes.size()
                << " bytes\n";
    if (!made->has_errors) return ExitStatus::fine;
    streams.err << "barwright: the file is written, but the project has errors: run `barwright "
                   "check` and mend them first\n";
    return ExitStatus::has_errors;
}

}  // namespace editor
