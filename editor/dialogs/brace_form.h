// A brace: the face that it lies on, the two nodes it runs between, its flat bar, and its ends.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/selection.h"
#include "model/catalogue/catalogue.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

// What the brace would come to as the form stands.
struct BraceTrial {
    Revision revision = 0;
    model::Diagonal tried;
    std::string section;
    std::string words;  // "42 5/8 long, held by 6 fasteners"; empty: it would not be made
    std::vector<model::Finding> findings;  // errors and warnings about it
};

struct BraceForm {
    std::string frame;
    std::string instead_of;    // the brace that is changed; empty for a new one
    model::Diagonal diagonal;  // as chosen so far
    std::string section;       // of flat bar that is no stock of the project yet; else empty
    std::string trouble;
    std::optional<BraceTrial> trial;
    bool is_fresh = true;
};

BraceForm brace_form(const std::string& frame, const model::Diagonal& diagonal);

// A new one between the two members that are chosen, else across the back of the frame; of the same
// bar as the last one.
BraceForm new_brace_form(const Derived& derived,
                         const model::Catalogue& catalogue,
                         const std::string& frame,
                         const Selection& selection);

struct BraceOutcome {
    std::optional<Change> change;
    bool is_cancelled = false;
};

BraceOutcome draw_brace_form(BraceForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue);

}  // namespace editor
