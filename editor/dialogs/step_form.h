// Steps a frame over an obstacle: what it would change is told before it is done.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "model/catalogue/catalogue.h"
#include "model/room/scans.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

// What of the step is asked for, as typed.
struct StepFields {
    std::string frame;
    std::string obstacle;
    std::string clearance;  // empty: the obstacle's own or the shop's
    std::string heads;      // empty: as far as its heads and tails stand out
    std::string apart;      // empty: as its legs want

    bool operator==(const StepFields&) const = default;
};

// What the step would come to as the form stands.
struct StepTrial {
    Revision revision = 0;
    StepFields fields;
    model::StepOver edit;  // with what was left empty
    std::string words;     // "6 planes, 14 members more, 2 bays less"; empty: it is refused
    std::string refusal;   // why
    std::vector<model::Finding> findings;  // errors and warnings that it would bring
};

struct StepForm {
    StepFields fields;
    std::optional<StepTrial> trial;
    bool is_fresh = true;
};

// For the frame and the obstacle that findings name together, else for the first of each.
StepForm new_step_form(const Derived& derived);

// Whether the room has an obstacle that can be stepped over, and the project a frame.
bool can_step_over(const model::Project& project);

struct StepOutcome {
    std::optional<Change> change;
    bool is_cancelled = false;
};

StepOutcome draw_step_form(StepForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue,
                           const model::ScanLibrary& scans);

}  // namespace editor
