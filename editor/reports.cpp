#include "editor/reports.h"

#include "editor/open_project.h"
#include "model/buying/comparison.h"
#include "model/room/read_scan.h"
#include "model/room/resolve_in_room.h"
#include "model/schedule/findings.h"
#include "model/schedule/write_all.h"

#include <algorithm>
#include <array>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>

namespace editor {
namespace {

struct Opened {
    model::Project project;
    model::Catalogue catalogue;
    model::Resolved resolved;
    model::PriceLibrary prices;

    // Of the supplier that is chosen.
    std::function<model::BarSupply(const model::Stock&)> supply() const {
        return model::chosen_supply(project, resolved, prices);
    }
};

engine::Result<Opened> opened(const std::filesystem::path& project_file) {
    auto project = open_project(project_file);
    if (!project) return project.error();
    auto catalogue = open_catalogue();
    if (!catalogue) return catalogue.error();
    Opened all{std::move(project).value(), std::move(catalogue).value(), {}, {}};
    if (all.project.name.empty()) all.project.name = project_file.stem().string();
    all.resolved = model::resolve_in_room(
        all.project, all.catalogue, model::read_scans(all.project, project_file.parent_path()));
    all.prices = model::read_price_library(all.project, all.catalogue, project_file);
    return all;
}

ExitStatus refusal(std::ostream& err, const engine::Error& error) {
    err << "barwright: " << engine::to_text(error) << "\n";
    return ExitStatus::not_possible;
}

std::string counted(std::size_t count, std::string_view thing) {
    return std::to_string(count) + " " + std::string(thing) + (count == 1 ? "" : "s");
}

using CountBySeverity = std::array<std::size_t, 3>;

CountBySeverity count_by_severity(const std::vector<model::Finding>& findings) {
    CountBySeverity counts{};
    for (const auto& finding : findings) ++counts[static_cast<std::size_t>(finding.severity)];
    return counts;
}

std::string severity_summary(const CountBySeverity& counts) {
    std::string text;
    for (const auto severity :
         {model::Severity::error, model::Severity::warning, model::Severity::note}) {
        if (!text.empty()) text += ", ";
        text += counted(counts[static_cast<std::size_t>(severity)], model::name_of(severity));
    }
    return text;
}

ExitStatus status_of(const CountBySeverity& counts) {
    const auto errors = counts[static_cast<std::size_t>(model::Severity::error)];
    return errors > 0 ? ExitStatus::has_errors : ExitStatus::fine;
}

void print_summary(std::ostream& out, const Opened& all, const CountBySeverity& counts) {
    out << all.project.name << ": " << counted(all.resolved.pieces.size(), "piece") << " in "
        << counted(all.resolved.marks.size(), "mark") << ", "
        << counted(all.resolved.holes.size(), "hole") << ", "
        << counted(all.resolved.fasteners.size(), "fastener") << "\n"
        << "findings: " << severity_summary(counts) << "\n";
}

void print_written(std::ostream& out,
                   const std::vector<model::ScheduleFile>& files,
                   const std::filesystem::path& folder) {
    out << "written to " << folder.string() << ":";
    for (const auto& file : files) out << " " << file.name;
    out << "\n";
}

void print(std::ostream& out, const model::Finding& finding) {
    out << model::name_of(finding.severity) << " " << finding.code << ": "
        << model::where_text(finding) << "\n  " << finding.what << "\n";
    if (!finding.mend.empty()) out << "  mend: " << finding.mend << "\n";
}

}  // namespace

ExitStatus write_schedules(const std::filesystem::path& project_file,
                           const std::filesystem::path& folder,
                           Streams streams) {
    const auto all = opened(project_file);
    if (!all) return refusal(streams.err, all.error());
    const auto files =
        model::schedule_files(all->project, all->catalogue, all->resolved, all->supply());
    if (const auto written = model::write_all(files, folder); !written) {
        return refusal(streams.err, written.error());
    }
    const auto counts = count_by_severity(
        model::all_findings(all->project, all->catalogue, all->resolved, all->supply()));
    print_summary(streams.out, *all, counts);
    print_written(streams.out, files, folder);
    const auto status = status_of(counts);
    if (status == ExitStatus::has_errors) {
        streams.err << "barwright: the schedules are written, but not fit to cut from: read "
                       "findings.csv and mend the errors first\n";
    }
    return status;
}

ExitStatus print_findings(const std::filesystem::path& project_file, Streams streams) {
    const auto all = opened(project_file);
    if (!all) return refusal(streams.err, all.error());
    auto findings = model::all_findings(all->project, all->catalogue, all->resolved, all->supply());
    std::ranges::stable_sort(findings, std::ranges::greater{}, &model::Finding::severity);
    for (const auto& finding : findings) print(streams.out, finding);
    const auto counts = count_by_severity(findings);
    streams.out << all->project.name << ": " << severity_summary(counts) << "\n";
    return status_of(counts);
}

}  // namespace editor
