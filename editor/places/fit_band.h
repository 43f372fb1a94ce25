// How far a dimension may go, below its strip: the band in which everything fits, what stops it,
// and the way to its end.
#pragma once

#include "editor/band_worker.h"
#include "editor/change.h"
#include "editor/derived.h"

#include <optional>

namespace editor {

// For a dimension that is a length and has a value. Takes the same height whatever is known, so
// that nothing jumps under the hand. Gives the change when its largest is asked for.
std::optional<Change> draw_fit_band(const model::Dimension& dimension,
                                    const BandState& state,
                                    engine::Length value,
                                    const Derived& derived);

}  // namespace editor
