#include "editor/derived.h"

#include "editor/places/bar_text.h"
#include "model/resolve/resolve.h"
#include "model/schedule/findings.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>

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
    summary.weight_kg = std::accumulate(derived.weights_kg.begin(), derived.weights_kg.end(), 0.0);
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

// Short lengths to the mark, sums of bar in feet and inches like those along the bottom.
std::string difference_text(engine::Length length, const engine::TapeStyle& shown) {
    constexpr auto short_bar = engine::Length::from_nm(12 * engine::Length::nm_per_inch);
    if (length >= short_bar) return bar_text(length, shown);
    auto style = shown;
    style.with_unit = true;
    return engine::tape_text(length, style);
}

void append_weight(std::string& text,
                   double before_kg,
                   double after_kg,
                   const engine::TapeStyle& shown) {
    constexpr double least_kg = 0.005;  // less is not told apart
    const double by = after_kg - before_kg;
    if (std::abs(by) < least_kg) return;
    append_part(text, model::weight_text(std::abs(by), shown) + (by > 0.0 ? " more" : " less"));
}

}  // namespace

std::string count_words(const Summary& summary) {
    std::string text;
    if (summary.open() > 0) text = std::to_string(summary.open()) + " to mend";
    if (summary.notes > 0) {
        append_part(text,
                    std::to_string(summary.notes) + (summary.notes == 1 ? " note" : " notes"));
    }
    return text;
}

Derived derive(const Snapshot& project, Revision revision, const model::Catalogue& catalogue) {
    Derived derived{.revision = revision, .project = project};
    derived.resolved = model::resolve(*project, catalogue);
    derived.cuts = model::cut_rows(*project, catalogue, derived.resolved);
    derived.drills = model::drill_rows(*project, catalogue, derived.resolved);
    derived.fasteners = model::fastener_rows(*project, catalogue, derived.resolved);
    derived.bars = model::bar_rows(*project, catalogue, derived.resolved);
    derived.weights_kg = model::piece_weights_kg(*project, catalogue, derived.resolved);
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
        append_part(text, difference_text(by, project.shown) + (more ? " more bar" : " less bar"));
    }
    append_weight(text, before.weight_kg, after.weight_kg, project.shown);
    append_count(text, before.bars, after.bars, "bar to buy", "bars to buy");
    append_count(text, before.fasteners, after.fasteners, "fastener", "fasteners");
    append_count(text, before.open(), after.open(), "thing to mend", "things to mend");
    return text;
}

}  // namespace editor
