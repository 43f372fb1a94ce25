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
    std::string words;  // what is known of the list: "4 bars, 2 sheets"
    bool is_fresh = true;
};

SupplierForm new_supplier_form(const model::Project& project);

struct SupplierOutcome : FormOutcome {
    bool begins_list = false;  // a list is to be written that can be filled in
};

SupplierOutcome draw_supplier_form(SupplierForm& form, const Derived& derived);

}  // namespace editor
