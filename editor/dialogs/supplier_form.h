// Somebody who sells: a name, the file of prices, and how bars come home.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"

#include <string>

namespace editor {

struct SupplierForm {
    model::Supplier supplier;
    std::string instead_of;  // empty: a new one
    std::string trouble;
    std::string words;        // what is known of the list: "4 bars, 2 sheets"
    bool can_begin = false;   // the list: there is none yet, and the project lies in a folder
    bool begins_list = true;  // one is written with the supplier, where there is none
    bool is_fresh = true;
};

SupplierForm new_supplier_form(const model::Project& project);

// The list is begun once the change is made: see SupplierForm::begins_list.
FormOutcome draw_supplier_form(SupplierForm& form, const Derived& derived);

}  // namespace editor
