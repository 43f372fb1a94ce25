// Buy: the bars and fasteners that the project takes.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/places/saw_fields.h"
#include "editor/selection.h"

#include <optional>
#include <string>

namespace editor {

// The lengths of bar to be had, half typed.
struct OfferTyping {
    std::string stock;  // whose; empty: none
    std::string text;
    std::string trouble;   // why it was not taken
    bool is_drawn = true;  // by the present frame
};

// Ends the typing: the change to make, or none - with the reason in `trouble` when the text will
// not do, which then stays.
std::optional<Change> take_typed_offers(OfferTyping& typing, const Derived& derived);

std::optional<Change> draw_buy(const Area& area,
                               const Derived& derived,
                               OfferTyping& typing,
                               SawTyping& saw,
                               Selection& selection);

// "16 ft; 20 ft" as offers, those kept that were there with their price and limit. Error: a length
// that cannot be read.
engine::Result<std::vector<model::BarOffer>> read_offers(const Derived& derived,
                                                         const model::Stock& stock,
                                                         const std::string& text);

}  // namespace editor
