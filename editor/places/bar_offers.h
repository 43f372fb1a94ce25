// The bars of a stock that can be bought, as one line of text: "16 ft at 27; 20 ft at 33.50, only
// 4".
#pragma once

#include "editor/change.h"
#include "editor/derived.h"

#include <optional>
#include <string>

namespace editor {

// That line, half typed.
struct OfferTyping {
    std::string stock;  // whose; empty: none
    std::string text;
    std::string trouble;   // why it was not taken
    bool is_drawn = true;  // by the present frame
};

std::string offers_text(const model::Stock& stock);

// Ends the typing: the change to make, or none - with the reason in `trouble` when the text will
// not do, which then stays.
std::optional<Change> take_typed_offers(OfferTyping& typing, const Derived& derived);

// A length alone keeps the price and limit that it had. Error: what cannot be read, told as it
// stands.
engine::Result<std::vector<model::BarOffer>> read_offers(const Derived& derived,
                                                         const model::Stock& stock,
                                                         const std::string& text);

}  // namespace editor
