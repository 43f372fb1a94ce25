// Buy: the bars and fasteners that the project takes.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/places/bar_offers.h"
#include "editor/places/saw_fields.h"
#include "editor/places/saw_list.h"
#include "editor/selection.h"

#include <optional>
#include <string>

namespace editor {

std::optional<Change> draw_buy(const Area& area,
                               const Derived& derived,
                               const model::Catalogue& catalogue,
                               OfferTyping& typing,
                               SawTyping& saw,
                               Selection& selection);

}  // namespace editor
