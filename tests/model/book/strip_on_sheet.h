// Papers of drill strips as they were drawn on their sheets, read from the pages.
#pragma once

#include "engine/drawing/document.h"

#include "tests/model/book/texts_on_page.h"

#include <string>
#include <vector>

namespace tests {

// What is cut out along its outline, and what lies within it.
struct PaperOnSheet {
    engine::PageBox box;                 // with its tab
    std::string name;                    // that stands over it
    std::vector<engine::PageBox> legs;   // between its edges and folds, without the tab
    std::vector<TextOnPage> texts;       // within
    std::vector<engine::PageBox> holes;  // their crosses
    int arrows = 0;
};

std::vector<PaperOnSheet> papers_on(const engine::Page& page);

// Joined by spaces in the order in which they were drawn; of those within the box alone.
std::string words_within(const PaperOnSheet& paper, const engine::PageBox& box);

// Which of these are said: "far side b" is not also "side b".
std::vector<std::string> said_among(const std::string& words, std::vector<std::string> names);

bool lies_within(const engine::PageBox& inner, const engine::PageBox& outer);

}  // namespace tests
