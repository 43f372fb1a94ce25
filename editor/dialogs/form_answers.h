// How a form ends: what is found of it, why it is refused, and the buttons that put, cancel or
// remove.
#pragma once

#include "editor/by_name.h"
#include "editor/change.h"
#include "editor/derived.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

struct FormOutcome {
    std::optional<Change> change;
    bool is_cancelled = false;
};

// With its mend, in the colour of how severe it is.
void draw_form_finding(const model::Finding& finding);

// "there is an opening "x" already; choose another name"; empty: the name is free.
template <class Thing>
std::string reason_against_name(const std::vector<Thing>& things,
                                const std::string& name,
                                const std::string& instead_of,
                                const std::string& thing) {
    if (name == instead_of || by_name(things, name) == nullptr) return {};
    return "there is " + thing + " \"" + name + "\" already; choose another name";
}

// Why an obstacle or an opening has no shape, or keeps a distance that is none; empty: it is sound.
std::string reason_against_shape(const std::vector<model::Finding>& findings);

// What is said where a field holds no value.
inline constexpr const char* mend_first = "mend what is said in red first";

// Why the edit is refused; empty: it is not.
std::string reason_against_edit(const Derived& derived, const model::Edit& edit);

// Whether something of the form was changed in this frame: what was said of it before is of another
// one.
bool is_being_changed();

struct AnswerLook {
    std::string_view verb = "Add";  // on the button that puts
    bool can_put = true;
    bool is_choosing = false;  // a list is open: Enter and Escape belong to it
    std::string_view removes;  // "Remove this brace"; empty: there is nothing to remove
};

struct FormAnswer {
    bool puts = false;
    bool is_cancelled = false;
    bool removes = false;
};

// The trouble in red, where there is one, above "Put", "Cancel" and "Remove".
FormAnswer draw_form_answers(const std::string& trouble, const AnswerLook& look);

// Behind all else of a form: closes it where that is what came of it.
void end_form(bool& is_fresh, const FormOutcome& outcome);

}  // namespace editor
