// A bar between two nodes: the face that it lies on, the nodes it runs between, what it is cut from
// and how it lies. A brace or a leaning member.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"
#include "editor/selection.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

// What the bar would come to as the form stands.
template <class Bar>
struct NodeBarTrial {
    WorkedOutOf of;
    Bar tried;
    std::string section;
    std::string words;  // "42 5/8 long, held by 6 fasteners"; empty: it would not be made
    std::vector<model::Finding> findings;  // about it
};

template <class Bar>
struct NodeBarForm {
    std::string frame;
    std::string instead_of;  // the bar that is changed; empty for a new one
    Bar bar;                 // as chosen so far
    std::string section;     // where its stock is none of the project yet; else empty
    std::string trouble;
    std::optional<NodeBarTrial<Bar>> trial;
    bool is_fresh = true;
};

using BraceForm = NodeBarForm<model::Diagonal>;
using LeaningForm = NodeBarForm<model::Leaning>;

template <class Bar>
NodeBarForm<Bar> node_bar_form(const std::string& frame, const Bar& bar);

// A new one between the two members that are chosen, else where one is put most often; of the same
// bar as the last one.
template <class Bar>
NodeBarForm<Bar> new_node_bar_form(const Derived& derived,
                                   const model::Catalogue& catalogue,
                                   const std::string& frame,
                                   const Selection& selection);

template <class Bar>
FormOutcome draw_node_bar_form(NodeBarForm<Bar>& form,
                               const Derived& derived,
                               const model::Catalogue& catalogue);

}  // namespace editor
