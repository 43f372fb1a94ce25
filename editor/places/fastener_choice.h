// What the joints are fastened with, for the whole project, unless a joint says otherwise.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "model/catalogue/catalogue.h"

#include <optional>

namespace editor {

// A line with the choice, from the catalogue's rivets and screws.
std::optional<Change> draw_fastener_choice(const Derived& derived,
                                           const model::Catalogue& catalogue);

}  // namespace editor
