// All words of the trade with their pictures, found by typing.
#pragma once

#include "editor/dialogs/trade_words_state.h"

namespace editor {

// Gives whether it was closed.
bool draw_trade_words(TradeWords& page);

}  // namespace editor
