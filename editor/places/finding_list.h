// What the program has to say: amber for what to look at, red for what is wrong.
#pragma once

#include "editor/derived.h"
#include "editor/selection.h"

#include <optional>
#include <vector>

namespace editor {

// Where the cards begin, one below the other; measured once for each state of the project.
struct FindingCards {
    std::optional<Revision> revision;
    float width = 0.0F;
    float text_size = 0.0F;
    std::vector<float> tops;  // of each card, and last the end of all
    bool wants_top = false;   // the first of them is to be seen
};

// Clicking a finding selects what it concerns.
void draw_finding_list(const Derived& derived, FindingCards& cards, Selection& selection);

// How high the list is at that width.
float height_of_findings(const Derived& derived, FindingCards& cards, float width);

}  // namespace editor
