// What to do now that a piece was cut wrong.
#pragma once

#include "editor/places/saw_changes.h"

#include <optional>

namespace editor {

// The bad piece on the rack, as long as it was typed; none where it is refused, with the reason in
// the talk.
std::optional<Change> bad_piece_kept(const Derived& derived, SawListState& state);

// The bad piece to the scrap. Where its length is typed that is kept: all that lies behind it on
// its bar goes by it.
std::optional<Change> bad_piece_scrapped(const Derived& derived, SawListState& state);

// Whether that is the cut of which something is to be said.
bool is_talked_of(const SawListState& state, const model::SawCut& cut);

// Nothing where none was. The change gives the bad piece its place.
std::optional<Change> draw_spoil_talk(const CutHands& hands);

}  // namespace editor
