// The real opening that a frame goes into, as measured: widths, diagonals, plumb of its sides.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_answers.h"

#include <string>

namespace editor {

struct OpeningForm {
    std::string frame;
    std::string instead_of;          // the opening that is changed; empty for a new one
    model::MeasuredOpening opening;  // as stated so far
    FieldsAsked asked{};
    std::string trouble;
    bool is_fresh = true;
};

OpeningForm opening_form(const std::string& frame, const model::MeasuredOpening& opening);
OpeningForm new_opening_form(const Derived& derived, const std::string& frame);

FormOutcome draw_opening_form(OpeningForm& form, const Derived& derived);

}  // namespace editor
