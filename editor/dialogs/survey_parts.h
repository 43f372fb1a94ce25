// What both surveys of the room share: reading, closings, what the obstacle would come to, answers.
#pragma once

#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/well_survey.h"

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
void draw_measured(const model::ObstacleShape& shape,
                   const Derived& derived,
                   const model::Catalogue& catalogue,
                   const model::ScanLibrary& scans);

// Why it cannot be put; empty when it can.
std::string reason_against_survey(const model::Edit& edit,
                                  const std::string& name,
                                  const Derived& derived);

struct SurveyAnswer {
    bool puts = false;
    bool is_cancelled = false;
};
SurveyAnswer draw_survey_answers(const std::string& trouble, bool can_put);

}  // namespace editor
