// The colours of the pieces when they tell something, and the legend that says what.
#pragma once

#include "editor/derived.h"
#include "editor/kit/theme.h"
#include "editor/view/seeing_state.h"
#include "engine/render/scene.h"

#include <string>
#include <vector>

namespace editor {

struct LegendRow {
    engine::Colour colour;
    std::string colour_name;  // "blue"
    std::string words;        // what it tells
    int count = 0;            // of pieces
};

struct PieceColours {
    std::vector<engine::Colour> of_pieces;  // by index; empty: the metal's own
    std::vector<LegendRow> legend;
};

PieceColours piece_colours(ColourBy by, const Derived& derived, const model::Catalogue& catalogue);

// "by stock", "by mark", "by finding", "by clearance", "as metal".
std::string_view words_of(ColourBy by);

}  // namespace editor
