// What to do now that a piece was cut wrong.
#pragma once

#include "editor/places/saw_changes.h"

#include <optional>

namespace editor {

// Nothing where none was. The change lays the bad piece on the rack.
std::optional<Change> draw_spoil_talk(const CutHands& hands);

}  // namespace editor
