// Small drawings of words of the trade: metal in its colour, what is meant in dye.
#pragma once

#include "editor/kit/trade_words.h"

#include <imgui.h>

namespace editor {

// Height for that width.
float height_of_trade_picture(float width);

// Onto any drawing. A word without a picture draws nothing.
void draw_trade_picture(ImDrawList& on, ImVec2 at, float width, const TradeWord& word);

}  // namespace editor
