// How lengths are shown: which tape the maker has in hand.
#pragma once

#include "editor/change.h"
#include "engine/measure/tape.h"

#include <optional>
#include <span>
#include <string>

namespace editor {

// "tape 1/32 in", "tape 1 mm".
// Those that the list offers.
std::span<const engine::TapeStyle> offered_tapes();

std::string tape_name(const engine::TapeStyle& shown);

// At the right end of the line; gives the change when another tape is chosen.
std::optional<Change> draw_tape_choice(const engine::TapeStyle& shown);

}  // namespace editor
