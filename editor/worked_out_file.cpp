#include "editor/worked_out_file.h"

#include "editor/open_project.h"
#include "model/buying/comparison.h"
#include "model/room/read_scan.h"
#include "model/room/resolve_in_room.h"
#include "model/schedule/findings.h"

#include <algorithm>
#include <utility>

namespace editor {

engine::Result<WorkedOutFile> worked_out_file(const std::filesystem::path& file) {
    auto project = open_project(file);
    if (!project) return project.error();
    auto catalogue = open_catalogue();
    if (!catalogue) return catalogue.error();
    WorkedOutFile made{std::move(project).value(), std::move(catalogue).value(), {}, {}};
    made.resolved = model::resolve_in_room(made.project, made.catalogue,
                                           model::read_scans(made.project, file.parent_path()));
    made.prices = model::read_price_library(made.project, made.catalogue, file);
    const auto from = model::chosen_supplier(made.project, made.prices);
    const auto findings = model::all_findings(made.project, made.catalogue, made.resolved,
                                              model::supply_of(made.project, made.resolved, from));
    made.has_errors = std::ranges::any_of(findings, [](const model::Finding& finding) {
        return finding.severity == model::Severity::error;
    });
    return made;
}

}  // namespace editor
