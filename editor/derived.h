// Everything that follows from the project as it stands now, made once for each revision.
#pragma once

#include "editor/finding_groups.h"
#include "editor/history.h"
#include "engine/measure/length.h"
#include "model/buying/price_library.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"
#include "model/room/scans.h"
#include "model/schedule/check_kind.h"
#include "model/schedule/saw_bars.h"
#include "model/schedule/tables.h"
#include "model/schedule/tally.h"

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// The figures along the bottom of the window.
struct Summary {
    int pieces = 0;
    engine::Length bar;  // what all pieces measure together
    double weight_kg = 0.0;
    int bars = 0;  // to buy
    bool is_nested = false;
    int fasteners = 0;
    int errors = 0;
    int warnings = 0;
    int notes = 0;

    int open() const { return errors + warnings; }

    bool operator==(const Summary&) const = default;
};

struct Derived {
    Revision revision = 0;
    Snapshot project;
    std::shared_ptr<const model::ScanLibrary> scans;    // of the room; never null
    std::shared_ptr<const model::PriceLibrary> prices;  // of the suppliers; null: none
    model::Resolved resolved;
    std::vector<model::CutRow> cuts;
    std::vector<model::DrillRow> drills;
    std::vector<model::FastenerRow> fasteners;
    std::vector<model::BarPlan> plans;     // by first fit, until the nest is there: see take_nest
    std::vector<model::BarRow> bars;       // of the plans
    std::vector<model::SawBar> saw;        // the same with what has been cut
    std::vector<double> weights_kg;        // of each piece
    std::vector<model::Finding> findings;  // of resolve and of the schedules
    std::vector<FindingGroup> finding_groups;  // those that say the same together
    std::size_t told_by_bench = 0;  // BenchDesk::state of which the findings tell; 0: of none
    Summary summary;
    model::CheckCounts checks;         // what each kind of check found
    std::optional<double> bars_price;  // of the bars to buy; none where one has no price
    model::Tally tally;
    std::vector<std::string> measures_of;  // of each dimension: the obstacle it is a measure of
};

std::shared_ptr<const model::ScanLibrary> no_scans();

Derived derive(const Snapshot& project,
               Revision revision,
               const model::Catalogue& catalogue,
               std::shared_ptr<const model::ScanLibrary> scans = no_scans(),
               std::shared_ptr<const model::PriceLibrary> prices = nullptr);

// What the stock's bars are: those of the supplier that is chosen, else what the project states.
// Both must outlive it.
std::function<model::BarSupply(const model::Stock&)> supply_of(const model::Project& project,
                                                               const model::Resolved& resolved,
                                                               const model::PriceLibrary* prices);

// Puts the plans in the place of those that are there, with all that is told of them.
void take_plans(Derived& derived,
                std::vector<model::BarPlan> plans,
                const model::Catalogue& catalogue);

// Of what something was worked out: when it is another state, or a scan has come in, it is to be
// worked out again.
struct WorkedOutOf {
    Revision revision = 0;
    std::shared_ptr<const model::ScanLibrary> scans;

    bool operator==(const WorkedOutOf&) const = default;
};

inline WorkedOutOf worked_out_of(const Derived& derived) {
    return {derived.revision, derived.scans};
}

// "24 to mend, 1 note"; empty when there is nothing to say.
std::string count_words(const Summary& summary);

// What one state of a project comes to.
struct Figures {
    Snapshot project;
    Summary summary;
    model::Tally tally;
};

Figures figures_of(const Derived& derived);

// What changed between two states, in a maker's words: "+4 gussets, +16 holes, +3.0 oz; 4 x-rails
// 1/4 in shorter; 3 3/4 in less bar, +1 thing to mend"; empty when the figures are the same.
std::string change_text(const Figures& before, const Figures& after);

}  // namespace editor
