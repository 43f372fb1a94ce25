#include "editor/derived.h"

#include "model/resolve/resolve.h"
#include "model/schedule/findings.h"

#include <algorithm>
#include <cstdlib>

namespace editor {
namespace {

int count_of(const std::vector<model::Finding>& findings, model::Severity severity) {
    return static_cast<int>(
        std::count_if(findings.begin(), findings.end(),
                      [&](const model::Finding& finding) { return finding.severity == severity; }));
}

Summary summary_of(const Derived& derived) {
    Summary summary;
    for (const auto& row : derived.cuts) {
        summary.pieces += row.quantity;
        summary.bar += row.length * row.quantity;
    }
    for (const auto& row : derived.bars) summary.bars = std::max(summary.bars, row.bar);
    summary.fasteners = static_cast<int>(derived.resolved.fasteners.size());
    const auto& findings = derived.findings;
    summary.errors = count_of(findings, model::Severity::error);
    summary.warnings = count_of(findings, model::Severity::warning);
    summary.notes = count_of(findings, model::Severity::note);
    return summary;
}

void append_part(std::string& text, const std::string& part) {
    if (!text.empty()) text += ", ";
    text += part;
}

void append_count(std::string& text, int before, int after, const char* one, const char* many) {
    if (before == after) return;
    const int by = std::abs(after - before);
    append_part(text, std::to_string(by) + " " + (by == 1 ? one : many) +
                          (after > before ? " more" : " fewer"));
}

}  // namespace

Derived derive(const Snapshot& project, Revision revision, const model::Catalogue& catalogue) {
    Derived derived{.revision = revision, .project = project};
    derived.resolved = model::resolve(*project, catalogue);
    derived.cuts = model::cut_rows(*project, catalogue, derived.resolved);
    derived.drills = model::drill_rows(*project, catalogue, derived.resolved);
    derived.fasteners = model::fastener_rows(*project, catalogue, derived.resolved);
    derived.bars = model::bar_rows(*project, catalogue, derived.resolved);
    derived.findings = model::all_findings(*project, derived.resolved);
    derived.finding_groups = finding_groups(derived.findings);
    derived.summary = summary_of(derived);
    return derived;
}

std::string change_text(const Summary& before,
                        const Summary& after,
                        const model::Project& project) {
    std::string text;
    append_count(text, before.pieces, after.pieces, "piece", "pieces");
    if (before.bar != after.bar) {
        const bool more = after.bar > before.bar;
        const auto by = more ? after.bar - before.bar : before.bar - after.bar;
        auto shown = project.shown;
        shown.with_unit = true;
        append_part(text, engine::tape_text(by, shown) + (more ? " more bar" : " less bar"));
    }
    append_count(text, before.bars, after.bars, "bar to buy", "bars to buy");
    append_count(text, before.fasteners, after.fasteners, "fastener", "fasteners");
    append_count(text, before.open(), after.open(), "open finding", "open findings");
    return text;
}

}  // namespace editor
