// What the program has to say: amber for what to look at, red for what is wrong.
#pragma once

#include "editor/derived.h"
#include "editor/selection.h"

#include <imgui.h>

#include <cstddef>
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

// One of Derived::finding_groups as such a card.
void draw_finding(const Derived& derived, std::size_t group, Selection& selection);
float height_of_finding(const Derived& derived, std::size_t group, float width);

// "Wrong", "Look at" or "Note", and the colour of the word.
struct SeverityWord {
    const char* word = "";
    ImU32 colour = 0;
};
SeverityWord word_of(model::Severity severity);

// How high the list is at that width.
float height_of_findings(const Derived& derived, FindingCards& cards, float width);

}  // namespace editor
