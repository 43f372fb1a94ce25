// What the program has to say: amber for what to look at, red for what is wrong.
#pragma once

#include "editor/derived.h"
#include "editor/places/finding_help.h"
#include "editor/selection.h"

#include <imgui.h>

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// A card that was clicked keeps its place on the screen while what it shows unfolds.
struct HeldCard {
    std::string key;
    float y = 0.0F;  // of its top, on the screen
    int frames = 0;  // for so many more
};

// Where the cards begin, one below the other; measured once for each state of the project.
struct FindingCards {
    std::optional<Revision> revision;
    float width = 0.0F;
    float text_size = 0.0F;
    std::vector<float> tops;  // of each card, and last the end of all
    bool wants_top = false;   // the first of them is to be seen
    // The card opened last, which the keys mend: known by what it says, so that it stays open when
    // others come and go. Empty: none.
    std::string open;
    // How high what the open ones show below their text is. One stays open until it is clicked
    // again: none below it moves under the hand.
    std::map<std::string, float> unfolded;
    std::map<std::string, float> measured;  // with these the cards were measured
    bool wants_open = false;                // the one opened last is to be seen
    std::optional<HeldCard> held;
    float floor = 0.0F;  // how far the list may be scrolled though its end is reached
};

// The group whose card was opened last; none where it is gone.
std::optional<std::size_t> open_group(const Derived& derived, const FindingCards& cards);

// Opens the card after the one opened last, or the first, and closes the others; false where there
// is none.
bool open_next(const Derived& derived, FindingCards& cards);

// Clicking a finding selects what it concerns, and opens its card: why, and mends as buttons.
std::optional<Change> draw_finding_list(const Derived& derived,
                                        FindingCards& cards,
                                        Selection& selection,
                                        FindingHands hands);

// One of Derived::finding_groups as such a card, open. `open_height`: of what it shows below its
// text, as it was drawn last.
std::optional<Change> draw_finding(const Derived& derived,
                                   std::size_t group,
                                   Selection& selection,
                                   float& open_height,
                                   FindingHands hands);
float height_of_finding(const Derived& derived, std::size_t group, float width);

// "Wrong", "Look at" or "Note", and the colour of the word.
struct SeverityWord {
    const char* word = "";
    ImU32 colour = 0;
};
SeverityWord word_of(model::Severity severity);

// How high the list is at that width: as it stands, and with no card open.
struct FindingsHeight {
    float whole = 0.0F;
    float folded = 0.0F;
};
FindingsHeight height_of_findings(const Derived& derived, FindingCards& cards, float width);

}  // namespace editor
