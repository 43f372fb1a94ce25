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

std::optional<Change> draw_buy(const Area& area,
                               const BuyLook& look,
                               OfferTyping& typing,
                               SawTyping& saw,
                               Selection& selection,
                               Dialog& dialog);

}  // namespace editor
