// The obstacles of the room: what they are, how large, and how near anything comes to them.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/room_facts.h"
#include "editor/selection.h"

#include <string_view>

namespace editor {

// Gives the command that was asked for.
std::string_view draw_obstacle_list(const Derived& derived,
                                    const RoomFacts& facts,
                                    Selection& selection,
                                    Dialog& dialog);

}  // namespace editor
