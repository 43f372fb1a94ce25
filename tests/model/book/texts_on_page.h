// The texts of a drawn page and the room that each of them takes.
#pragma once

#include "engine/drawing/page.h"

#include <string>
#include <vector>

namespace tests {

struct TextOnPage {
    std::string text;
    engine::PageBox box;  // of its capitals
    engine::Lettering lettering;

    double right() const { return box.left + box.width; }
    double bottom() const { return box.top + box.height; }
};

std::vector<TextOnPage> texts_on(const engine::Page& page);

// All in a row, a space between.
std::string words_on(const engine::Page& page);

// Names two texts that lie on one another, or one that is not on the page; empty: none.
std::string clash_on(const engine::Page& page);

}  // namespace tests
