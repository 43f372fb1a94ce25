// The chosen piece: laid flat on dye blue, with its holes and how to drill them.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/places/section_choice.h"
#include "editor/selection.h"

#include <optional>
#include <string>

namespace editor {

struct PieceHands {
    Selection& selection;
    std::optional<model::Index>& hovered_hole;
    SectionTyping& stock_filter;
};

std::optional<Change> draw_piece_panel(const Area& area,
                                       const Derived& derived,
                                       const model::Catalogue& catalogue,
                                       PieceHands hands);

// The piece laid flat, alone, with one hole marked. Gives the hole under the pointer.
std::optional<model::Index> draw_flat_piece(const Area& area,
                                            const Derived& derived,
                                            const model::Catalogue& catalogue,
                                            model::Index piece,
                                            std::optional<model::Index> marked_hole);

}  // namespace editor
