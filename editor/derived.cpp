#include "editor/derived.h"

#include "editor/places/bar_text.h"
#include "model/buying/comparison.h"
#include "model/project/obstacle_measures.h"
#include "model/room/resolve_in_room.h"
#include "model/schedule/bars_sold.h"
#include "model/schedule/findings.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <numeric>
#include <utility>

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
        if (!model::is_of_sheet(row.kind)) summary.bar += row.length * row.quantity;
    }
    summary.weight_kg = std::accumulate(derived.weights_kg.begin(), derived.weights_kg.end(), 0.0);
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
    const auto words = model::count_change_words(after - before, one, many);
    if (!words.empty()) append_part(text, words);
}

// Short lengths to the mark, sums of bar in feet and inches like those along the bottom.
std::string difference_text(engine::Length length, const engine::TapeStyle& shown) {
    constexpr auto short_bar = engine::Length::from_nm(12 * engine::Length::nm_per_inch);
    if (length >= short_bar) return bar_text(length, shown);
    auto style = shown;
    style.with_unit = true;
    return engine::tape_text(length, style);
}

// Bar, bars and what is to mend.
std::string consequence_words(const Figures& was, const Figures& is) {
    const auto& before = was.summary;
    const auto& after = is.summary;
    std::string text;
    if (before.bar != after.bar) {
        const bool more = after.bar > before.bar;
        const auto by = more ? after.bar - before.bar : before.bar - after.bar;
        append_part(text,
                    difference_text(by, is.project->shown) + (more ? " more bar" : " less bar"));
    }
    // A plan made at once and one that is the cheapest are not to be compared.
    if (before.is_nested == after.is_nested) {
        append_count(text, before.bars, after.bars, "bar to buy", "bars to buy");
    }
    append_count(text, before.open(), after.open(), "thing to mend", "things to mend");
    return text;
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

std::shared_ptr<const model::ScanLibrary> no_scans() {
    static const auto none = std::make_shared<const model::ScanLibrary>();
    return none;
}

std::function<model::BarSupply(const model::Stock&)> supply_of(const model::Project& project,
                                                               const model::Resolved& resolved,
                                                               const model::PriceLibrary* prices) {
    if (prices == nullptr || project.shop.supplier.empty()) return {};
    return model::chosen_supply(project, resolved, *prices);
}

void take_plans(Derived& derived,
                std::vector<model::BarPlan> plans,
                const model::Catalogue& catalogue) {
    derived.plans = std::move(plans);
    derived.bars = model::bar_rows(*derived.project, catalogue, derived.resolved, derived.plans);
    derived.saw = model::saw_bars(*derived.project, catalogue, derived.resolved, derived.plans);
    derived.summary.bars = model::bars_to_buy(*derived.project, derived.plans);
    derived.bars_price = price_of_bars(derived);
}

Derived derive(const Snapshot& project,
               Revision revision,
               const model::Catalogue& catalogue,
               std::shared_ptr<const model::ScanLibrary> scans,
               std::shared_ptr<const model::PriceLibrary> prices) {
    Derived derived{.revision = revision,
                    .project = project,
                    .scans = std::move(scans),
                    .prices = std::move(prices)};
    derived.resolved = model::resolve_in_room(*project, catalogue, *derived.scans);
    derived.cuts = model::cut_rows(*project, catalogue, derived.resolved);
    derived.drills = model::drill_rows(*project, catalogue, derived.resolved);
    derived.fasteners = model::fastener_rows(*project, catalogue, derived.resolved);
    derived.weights_kg = model::piece_weights_kg(*project, catalogue, derived.resolved);
    const auto supply = supply_of(*project, derived.resolved, derived.prices.get());
    derived.findings = model::all_findings(*project, catalogue, derived.resolved, supply);
    derived.finding_groups = finding_groups(derived.findings);
    derived.summary = summary_of(derived);
    take_plans(derived,
               model::bar_plans(*project, catalogue, derived.resolved,
                                {.effort = model::PlanEffort::first_fit, .supply = supply}),
               catalogue);
    derived.checks = model::count_by_check(derived.findings);
    derived.tally = model::tally_of(*project, catalogue, derived.resolved, derived.weights_kg);
    derived.measures_of = model::obstacle_measures(*project);
    return derived;
}

Figures figures_of(const Derived& derived) {
    return {derived.project, derived.summary, derived.tally};
}

std::string change_text(const Figures& before, const Figures& after) {
    std::string text;
    for (const auto& part :
         {model::change_words(before.tally, after.tally, after.project->shown),
          model::length_change_words(*before.project, before.tally, *after.project, after.tally),
          consequence_words(before, after)}) {
        if (part.empty()) continue;
        text += (text.empty() ? "" : "; ") + part;
    }
    return text;
}

}  // namespace editor
