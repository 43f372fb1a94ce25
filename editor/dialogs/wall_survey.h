// A wall entered as the tape measures it: from a plumb line, at some heights.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_answers.h"
#include "editor/room_facts.h"
#include "model/catalogue/catalogue.h"
#include "model/room/survey.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

struct WallSurvey {
    struct Row {
        std::string height;
        std::string to_wall;
        std::string to_other;
        std::string across;
    };

    std::string name;
    model::Sense inside = model::Sense::plus;  // the side on which the room is
    std::string line;                          // X of the plumb line
    std::string from = "0";                    // Y
    std::string to;
    std::vector<Row> rows;
    char active = ' ';
    FieldsAsked asked;
    std::string trouble;
    std::optional<TriedObstacle> trial;
    bool is_fresh = true;
};

WallSurvey new_wall_survey(const Derived& derived);

model::WallTape tape_of(const WallSurvey& survey, const Derived& derived);

FormOutcome draw_wall_survey(WallSurvey& survey,
                             const Derived& derived,
                             const model::Catalogue& catalogue);

}  // namespace editor
