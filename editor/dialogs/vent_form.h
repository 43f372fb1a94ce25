// Openings for air in a panel: how large they must be beside the exhaust, and where they go.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "model/catalogue/catalogue.h"
#include "model/project/vent.h"

#include <array>
#include <optional>
#include <string>

namespace editor {

// What the openings are sized by.
struct VentSource {
    bool is_round = true;  // the exhaust
    std::string diameter;
    std::string exhaust_width;
    std::string exhaust_height;
    std::string exhaust_cover;  // ids in the catalogue
    std::string ratio = "1";
    std::string intake_cover;
};

struct VentForm {
    std::string frame;
    std::string panel;
    VentSource source;
    std::string count = "2";
    std::string height;  // of each opening
    std::string gap;
    bool is_stacked = false;
    std::array<std::string, 2> from;  // of the first one, by the panel's axes; empty: in the middle
    std::string trouble;              // why they were not put in
    bool is_fresh = true;
};

// With the openings that the panel has, where it has some.
VentForm vent_form(const Derived& derived, const std::string& frame, const std::string& panel);

// What the openings' sides are called on that face of a bay: nothing is high in a top.
struct VentWords {
    const char* along = "";                // "wide": the first axis
    const char* other = "";                // "high"
    const char* each = "";                 // "height of each": along the second axis
    const char* stacked = "";              // "one above another"
    std::array<const char*, 2> from = {};  // "from left", "from foot"
};

VentWords vent_words(model::Axis face_axis);

// Of the panel in the form; of an upright face where it is gone.
VentWords vent_words(const VentForm& form, const Derived& derived);

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
