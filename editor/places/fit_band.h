// How far a dimension may go, below its strip: the band in which everything fits, what stops it,
// and the way to its end.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "model/room/band.h"

#include <optional>

namespace editor {

// For a dimension that is a length and has a value; gives the change when its largest is asked for.
std::optional<Change> draw_fit_band(const model::Band& band,
                                    engine::Length value,
                                    const engine::TapeStyle& shown);

}  // namespace editor
