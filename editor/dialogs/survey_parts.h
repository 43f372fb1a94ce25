// What both surveys of the room share: reading, closings, what the obstacle would come to, answers.
#pragma once

#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_answers.h"
#include "editor/room_facts.h"
#include "model/catalogue/catalogue.h"
#include "model/room/survey.h"

#include <functional>
#include <optional>
#include <span>
#include <string>

namespace editor {

// None of an empty text and of one that gives no length.
std::optional<model::Nm> read_length(const std::string& text, const Derived& derived);

// One line for each, amber where it asks to measure again.
void draw_closings(std::span<const model::Closing> closings, const engine::TapeStyle& shown);

// "measured: along the van closes to the mark": for the obstacle's note.
std::string note_of(std::span<const model::Closing> closings, const engine::TapeStyle& shown);

// How near it comes, and what is wrong with its shape.
void draw_measured(std::optional<TriedObstacle>& trial,
                   const model::ObstacleShape& shape,
                   const Derived& derived,
                   const model::Catalogue& catalogue);

// The drawing that shows where to measure, and beside it the fields.
void draw_beside_picture(float picture_width,
                         const std::function<void()>& draw_picture,
                         const std::function<void()>& draw_fields);

// The answers of a survey whose edit puts an obstacle of that name.
// Fields that hold no value are told once it is to be put.
template <class Survey, class MakeEdit>
FormOutcome draw_survey_end(Survey& survey,
                            bool can_put,
                            bool are_known,
                            const Derived& derived,
                            const MakeEdit& make_edit) {
    FormOutcome outcome;
    if (is_being_changed()) survey.trouble.clear();
    const auto answer = draw_form_answers(survey.trouble, {.can_put = can_put});
    outcome.is_cancelled = answer.is_cancelled;
    if (answer.puts && !are_known) {
        survey.asked.all = true;
        survey.trouble = mend_first;
    } else if (answer.puts) {
        const model::Edit edit = make_edit();
        survey.trouble = reason_against_name(derived.project->room, survey.name, {}, "an obstacle");
        if (survey.trouble.empty()) survey.trouble = reason_against_edit(derived, edit);
        if (survey.trouble.empty() && survey.trial)
            survey.trouble = reason_against_shape(survey.trial->facts.findings);
        if (survey.trouble.empty()) outcome.change = change_of(edit);
    }
    end_form(survey.is_fresh, outcome);
    return outcome;
}

}  // namespace editor
