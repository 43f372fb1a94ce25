// The words of the trade that the window uses, each with one sentence that says what it means.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

namespace editor {

// What is drawn beside a word; one picture may serve several, with the part that is meant in dye.
enum class TermPicture {
    none,
    angle,  // heel, toe, root and legs
    gauge,
    pitch,
    edge_distance,
    grip,
    lap,
    gusset,
    cleat,
    strap,
    splice,
    cope,
    mitre,
    shim,
    kerf,
    end_trim,
    plane,
    bay,
    opposite_hand,
    datum_end,
    square,
};

struct TradeWord {
    std::string_view word;
    std::string_view what;  // a sentence or two, with their stops
    TermPicture picture = TermPicture::none;
    std::string_view also = {};  // how labels say it too
};

std::span<const TradeWord> trade_words();  // rising

// The word itself, or null.
const TradeWord* trade_word(std::string_view word);

// The longest word of the trade that occurs whole in a label, whatever its capitals and with or
// without an "s" behind it; null where there is none.
const TradeWord* trade_word_in(std::string_view label);

// Those in whose name or sentence all the words occur.
std::vector<std::size_t> found_trade_words(std::string_view words);

}  // namespace editor
