// Where a chosen obstacle of the room is come nearest to: a short dimension line with its length.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/room_facts.h"
#include "editor/selection.h"
#include "editor/view/view_state.h"

namespace editor {

void draw_near_lines(const Area& area,
                     const Derived& derived,
                     const RoomFacts& facts,
                     const Selection& selection,
                     const ViewState& view);

}  // namespace editor
