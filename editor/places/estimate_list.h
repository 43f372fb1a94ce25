// Buy, below the suppliers: what was paid, what is still to buy, and what a length of bar is worth.
#pragma once

#include "editor/places/buy.h"
#include "model/buying/what_if.h"

#include <string>

namespace editor {

// What the bars cost without a length: "about 12.50 crowns more", "costs the same".
std::string difference_words(const model::WithoutLength& it, const std::string& currency);

// `facts` is null while they are being worked out.
void draw_estimate(const Derived& derived, const BuyFacts* facts, PurchaseWish& wish);

}  // namespace editor
