// What to do now that a piece was cut wrong.
#pragma once

#include "editor/places/saw_changes.h"

#include <optional>

namespace editor {

// The bad piece on the rack, as long as it was typed; none where it is refused, with the reason in
// the talk.
std::optional<Change> bad_piece_kept(const Derived& derived, SpoilTalk& talk);

// Nothing where none was. The change lays the bad piece on the rack.
std::optional<Change> draw_spoil_talk(const CutHands& hands);

}  // namespace editor
