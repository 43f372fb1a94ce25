#include "editor/strips_command.h"

#include "editor/paper_names.h"
#include "editor/worked_out_file.h"
#include "engine/drawing/pdf.h"
#include "engine/files/whole_file.h"
#include "engine/measure/tape.h"
#include "model/book/drill_strips.h"

#include <CLI/CLI.hpp>

#include <optional>
#include <ostream>
#include <utility>
#include <vector>

namespace editor {
namespace {

engine::Result<std::optional<engine::Length>> measured_length(const model::Project& project,
                                                              const char* option,
                                                              const std::string& text) {
    if (text.empty()) return std::optional<engine::Length>{};
    const auto length = engine::read_length(text, engine::bare_unit(project.shown));
    if (length) return std::optional<engine::Length>{*length};
    engine::Error error = length.error();
    error.where = std::string(option) + " \"" + text + "\", " + error.where;
    return error;
}

engine::Result<model::PrinterScale> scale_from(const model::Project& project,
                                               const StripsArguments& arguments) {
    const auto across = measured_length(project, "--ruler-across", arguments.ruler_across);
    if (!across) return across.error();
    const auto down = measured_length(project, "--ruler-down", arguments.ruler_down);
    if (!down) return down.error();
    return model::printer_scale(project, *across, *down);
}

struct Written {
    std::size_t pages = 0;
    std::string ruler;                 // "4 in"
    std::vector<std::string> refused;  // as DrillStrips
    bool has_errors = false;
};

std::string why_there_is_none(const model::DrillStrips& strips) {
    std::string why;
    for (const auto& words : strips.refused) why += (why.empty() ? "" : "; ") + words;
    if (!why.empty()) return why;
    return "nothing in it is drilled that a strip could mark; panels are marked from their "
           "drawings";
}

engine::Result<Written> written_strips(const StripsArguments& arguments) {
    const auto made = worked_out_file(arguments.project);
    if (!made) return made.error();
    const auto scale = scale_from(made->project, arguments);
    if (!scale) return scale.error();
    const auto strips = model::drill_strips(made->project, made->catalogue, made->resolved,
                                            {.paper = paper_for(made->project, arguments.paper),
                                             .printer = *scale,
                                             .has_errors = made->has_errors});
    const auto& pages = strips.document.pages;
    if (pages.empty()) {
        return engine::Error{engine::ErrorCode::invalid_value, arguments.project,
                             why_there_is_none(strips)};
    }
    const auto bytes = engine::pdf_bytes(strips.document);
    if (!bytes) return bytes.error();
    if (const auto done = engine::write_whole_file(arguments.file, *bytes); !done)
        return done.error();
    auto style = made->project.shown;
    style.with_unit = true;
    return Written{pages.size(), engine::exact_text(model::measured_ruler(made->project), style),
                   strips.refused, made->has_errors};
}

}  // namespace

void add_strips(CLI::App& app, StripsArguments& arguments) {
    auto* strips = app.add_subcommand(
        "strips", "Write drill strips: paper at full size to wrap round the bars");
    strips->add_option("PROJECT", arguments.project, "The project's file")
        ->type_name("FILE")
        ->required();
    strips->add_option("--out", arguments.file, "The PDF file to write")
        ->type_name("FILE")
        ->required();
    strips
        ->add_option("--paper", arguments.paper,
                     "What they are printed on; letter for a project in inches, else a4")
        ->check(CLI::IsMember(paper_names(), CLI::ignore_case));
    strips
        ->add_option("--ruler-across", arguments.ruler_across,
                     "What the printed ruler across the sheet measures: that of 100 mm, or of "
                     "4 in for a project in inches")
        ->type_name("LENGTH");
    strips->add_option("--ruler-down", arguments.ruler_down, "The same of the ruler down the sheet")
        ->type_name("LENGTH");
}

ExitStatus run_strips(const StripsArguments& arguments, Streams streams) {
    const auto written = written_strips(arguments);
    if (!written) {
        streams.err << "barwright: " << engine::to_text(written.error()) << "\n";
        return ExitStatus::not_possible;
    }
    streams.out << "written to " << arguments.file << ": " << written->pages
                << (written->pages == 1 ? " sheet" : " sheets") << ". Print at 100 %";
    if (arguments.ruler_across.empty() && arguments.ruler_down.empty()) {
        streams.out << " and measure both rulers of " << written->ruler
                    << "; where they are off, give --ruler-across and --ruler-down";
    }
    streams.out << "\n";
    for (const auto& words : written->refused) streams.err << "barwright: " << words << "\n";
    if (written->has_errors) {
        streams.err << "barwright: the strips are written, but the project is not fit to cut from: "
                       "run `barwright check` and mend the errors first\n";
    }
    const bool is_fine = written->refused.empty() && !written->has_errors;
    return is_fine ? ExitStatus::fine : ExitStatus::has_errors;
}

}  // namespace editor
