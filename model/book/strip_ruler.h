// Rulers on a sheet at full size, which tell whether it was printed so.
#pragma once

#include "engine/drawing/page.h"
#include "model/book/drill_strips.h"

namespace model {

inline constexpr double strip_margin = 8.0;  // mm that no printer reaches
inline constexpr double ruler_room = 17.0;   // beyond the margin, at the left and at the foot
inline constexpr double strip_sheet_head =
    25.5;  // beyond the margin at the top, for what a sheet says

// 100 mm and 4 in, across at the foot and down at the left, with the words "print at 100 %".
void draw_rulers(engine::Page& page, const PrinterScale& printer);

}  // namespace model
