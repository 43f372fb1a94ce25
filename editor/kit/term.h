// A word of the trade on a label: a quiet dotted line below it says that the pointer finds an
// explanation there, with a small picture where one helps.
#pragma once

#include "editor/kit/theme.h"
#include "editor/kit/trade_words.h"

#include <string_view>

namespace editor {

// As draw_text. Where no word of the trade is in the label, nothing else.
void draw_term(std::string_view label, ImU32 packed = colour::ink);
void draw_term(std::string_view label, Type type, ImU32 packed = colour::ink);

// Marks the last item, which shows the label, and explains it while the pointer rests on it.
void explain_term(std::string_view label);

// The headings of the table that is open, each explained.
void draw_term_headings();

// The word, its sentence and its picture, in the panel or tooltip that is open.
void draw_trade_word(const TradeWord& word, float width);

}  // namespace editor
