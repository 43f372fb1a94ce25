// Buy, below the suppliers: what was paid, what is still to buy, and what a length of bar is worth.
#pragma once

#include "editor/places/buy.h"

namespace editor {

// `facts` is null while they are being worked out.
void draw_estimate(const Derived& derived, const BuyFacts* facts, PurchaseWish& wish);

}  // namespace editor
