// A dimension's name, formula, limits and note.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"

#include <string>

namespace editor {

struct DimensionForm {
    std::string instead_of;  // the dimension that is changed; empty for a new one
    engine::QuantityKind kind = engine::QuantityKind::length;
    std::string name;
    std::string formula;
    std::string least;  // empty: none
    std::string most;
    std::string note;
    std::string trouble;
    bool is_fresh = true;
};

DimensionForm dimension_form(const model::Dimension& dimension);

FormOutcome draw_dimension_form(DimensionForm& form, const Derived& derived);

}  // namespace editor
