// What member comes onto a stretch of a grid line: its name, and where its legs point by
// themselves.
#pragma once

#include "editor/view/plane_grid.h"

#include <string>

namespace editor {

// The member that lies on the line along some of the stretch; null where none does.
const model::Member* member_on(const model::Frame& frame,
                               const PlaneGrid& grid,
                               const GridSegment& segment);

// On the outside of the frame's bays the heel is outside and the legs point into them; round a
// corner that is left out of them the root lies on the line. Between bays as the starters lay
// them: rails hang below a shelf's upper face, at a divider legs point to the right. A frame
// without bays is inside all between its outermost planes.
model::Member new_member(const model::Frame& frame,
                         const PlaneGrid& grid,
                         const GridSegment& segment,
                         const std::string& stock);

// What most of the frame's members are cut from; of a frame without members the project's first
// stock. Empty: the project has none.
std::string usual_stock_of(const model::Project& project, const model::Frame& frame);

// The bay that takes up the cell; null where none does.
const model::Bay* bay_at(const model::Frame& frame, const PlaneGrid& grid, const GridCell& cell);

// An open bay of the cell.
model::Bay new_bay(const PlaneGrid& grid, const GridCell& cell, std::string name);

}  // namespace editor
