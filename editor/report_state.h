// What the window shows, as one line of JSON for scripts that drive it.
#pragma once

#include "editor/desk.h"
#include "editor/kit/item_log.h"

#include <string>

namespace editor {

// Fields: title, file, saved, place, dialog, dimensions{name: as shown}, pieces, fasteners, open
// (findings), chosen[members], notice, view{turn, tilt, distance}, text_input, items{name: [x, y,
// value]} with the middles of all items that can be reached now, in window pixels.
std::string state_line(Desk& desk, const ItemMap& items, bool wants_text);

}  // namespace editor
