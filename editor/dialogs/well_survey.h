// A wheel well entered as the tape measures it: which lengths to take, where, and whether those
// that say the same thing twice agree.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_answers.h"
#include "editor/room_facts.h"
#include "model/catalogue/catalogue.h"
#include "model/room/survey.h"

#include <optional>
#include <string>

namespace editor {

struct WellSurvey {
    std::string name;
    model::Sense inside = model::Sense::plus;  // plus: at the wall at smaller X
    std::string wall = "0";                    // X
    std::string datum = "0";                   // Y
    std::string floor = "0";                   // Z
    std::string start;
    std::string length;
    std::string behind;
    std::string room_length;
    std::string height;
    std::string reach;
    std::string top_reach;
    std::string across;
    std::string opposite;
    std::string room_width;
    std::string rounding;
    bool rounding_is_gap = false;
    std::string corner;
    char active = ' ';  // the letter whose field has the focus
    FieldsAsked asked;
    std::string trouble;
    std::optional<TriedObstacle> trial;
    bool is_fresh = true;
};

WellSurvey new_well_survey(const Derived& derived);

// What can be read of it.
model::WellTape tape_of(const WellSurvey& survey, const Derived& derived);

FormOutcome draw_well_survey(WellSurvey& survey,
                             const Derived& derived,
                             const model::Catalogue& catalogue);

}  // namespace editor
