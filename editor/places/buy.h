// Buy: the bars and fasteners that the project takes.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/places/bar_offers.h"
#include "editor/places/saw_fields.h"
#include "editor/places/saw_list.h"
#include "editor/places/supplier_list.h"
#include "editor/selection.h"

#include <optional>
#include <string>

namespace editor {

// What Buy shows.
struct BuyLook {
    const Derived& derived;
    const model::Catalogue& catalogue;
    const BuyFacts* facts = nullptr;  // null while they are being worked out
};

// What is to be noted as bought, or taken back: see editor/purchase_desk.h.
struct PurchaseWish {
    enum class Kind { none, bars, all, take_back, count_again, forget };
    Kind kind = Kind::none;
    std::size_t which = 0;  // of the last three: in Purchases::all
};

std::optional<Change> draw_buy(const Area& area,
                               const BuyLook& look,
                               PurchaseWish& wish,
                               OfferTyping& typing,
                               SawTyping& saw,
                               Selection& selection,
                               Dialog& dialog);

}  // namespace editor
