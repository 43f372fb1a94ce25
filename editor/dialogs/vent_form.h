// Openings for air in a panel: how large they must be beside the exhaust, and where they go.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "model/catalogue/catalogue.h"
#include "model/project/vent.h"

#include <optional>
#include <string>

namespace editor {

struct VentForm {
    std::string frame;
    std::string panel;
    bool is_round = true;  // the exhaust
    std::string diameter;
    std::string exhaust_width;
    std::string exhaust_height;
    std::string exhaust_cover;  // ids in the catalogue
    std::string ratio = "1";
    std::string intake_cover;
    std::string count = "2";
    std::string height;  // of each opening
    std::string gap;
    bool is_stacked = false;
    std::string from_side;  // empty: in the middle
    std::string from_foot;
    std::string trouble;  // why they were not put in
    bool is_fresh = true;
};

VentForm vent_form(const Derived& derived, const std::string& frame, const std::string& panel);

// What the form says as it stands: how large, where, and why not.
struct VentAnswer {
    std::optional<model::VentSizing> sizing;
    std::optional<model::VentRow> row;  // of openings that the panel can hold
    std::string trouble;                // in words; empty when there is a row
};

VentAnswer vent_answer(const VentForm& form,
                       const Derived& derived,
                       const model::Catalogue& catalogue);

struct VentOutcome {
    std::optional<Change> change;
    bool is_cancelled = false;
};

VentOutcome draw_vent_form(VentForm& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue);

}  // namespace editor
