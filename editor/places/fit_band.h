// How far a dimension may go, on a line below its strip: the band in which everything fits, the way
// to its end, and what stops it there.
#pragma once

#include "editor/band_worker.h"
#include "editor/change.h"
#include "editor/derived.h"

#include <optional>

namespace editor {

// Of the trough at the left of such a line.
float trough_width(float width);

// For a dimension that is a length and has a value. One line whatever is known, so that nothing
// jumps under the hand. Gives the change when its largest is asked for.
std::optional<Change> draw_fit_band(const model::Dimension& dimension,
                                    const BandState& state,
                                    engine::Length value,
                                    const Derived& derived);

}  // namespace editor
