// Where a chosen obstacle of the room is come nearest to: a short dimension line with its length.
#pragma once

#include "editor/derived.h"
#include "editor/kit/scopes.h"
#include "editor/measured_line.h"
#include "editor/room_facts.h"
#include "editor/selection.h"
#include "editor/view/view_state.h"

#include <vector>

namespace editor {

// Lines that something else asks for.
void draw_measured_lines(const Area& area,
                         const std::vector<MeasuredLine>& lines,
                         const ViewState& view);

void draw_near_lines(const Area& area,
                     const Derived& derived,
                     const RoomFacts& facts,
                     const Selection& selection,
                     const ViewState& view);

}  // namespace editor
