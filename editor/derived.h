// Everything that follows from the project as it stands now, made once for each revision.
#pragma once

#include "editor/finding_groups.h"
#include "editor/history.h"
#include "engine/measure/length.h"
#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"
#include "model/schedule/tables.h"

#include <string>
#include <vector>

namespace editor {

// The figures along the bottom of the window.
struct Summary {
    int pieces = 0;
    engine::Length bar;  // what all pieces measure together
    double weight_kg = 0.0;
    int bars = 0;
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
    model::Resolved resolved;
    std::vector<model::CutRow> cuts;
    std::vector<model::DrillRow> drills;
    std::vector<model::FastenerRow> fasteners;
    std::vector<model::BarRow> bars;
    std::vector<double> weights_kg;            // of each piece
    std::vector<model::Finding> findings;      // of resolve and of the schedules
    std::vector<FindingGroup> finding_groups;  // those that say the same together
    Summary summary;
};

Derived derive(const Snapshot& project, Revision revision, const model::Catalogue& catalogue);

// "24 to mend, 1 note"; empty when there is nothing to say.
std::string count_words(const Summary& summary);

// What changed between two states, in a maker's words: "2 pieces more, 3 3/4 in more bar, 0.09 lb
// more"; empty when the figures are the same.
std::string change_text(const Summary& before, const Summary& after, const model::Project& project);

}  // namespace editor
