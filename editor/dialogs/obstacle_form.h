// An obstacle of the room: its shape by formulas, what is kept from it, and how near it comes.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_answers.h"
#include "editor/obstacle_words.h"
#include "editor/room_facts.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>

namespace editor {

// What the obstacle would come to as the form stands.
struct ObstacleTrial {
    WorkedOutOf of;
    model::Obstacle tried;
    std::string words;  // "1/2 in from post left"; empty: it has no shape
    ObstacleFacts facts;
};

struct ObstacleForm {
    std::string instead_of;    // the obstacle that is changed; empty for a new one
    model::Obstacle obstacle;  // as stated so far
    FieldsAsked asked;
    std::string trouble;
    std::optional<ObstacleTrial> trial;
    std::string scan_words;  // of a scan: that it is being read, or why it is not
    bool is_fresh = true;
};

ObstacleForm obstacle_form(const model::Obstacle& obstacle);
ObstacleForm new_obstacle_form(const Derived& derived, ObstacleKind kind);

// A new one like it, under a free name.
ObstacleForm copied_obstacle_form(const Derived& derived, const model::Obstacle& obstacle);

struct ObstacleOutcome : FormOutcome {
    bool wants_points = false;  // then the scan is to be placed by three points
    bool is_copied = false;     // then the form goes on with a new obstacle like this one
};

ObstacleOutcome draw_obstacle_form(ObstacleForm& form,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue);

}  // namespace editor
