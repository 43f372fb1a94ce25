// Make, at the saw: the same cuts by the settings of the stop.
#pragma once

#include "editor/places/saw_changes.h"

#include <optional>

namespace editor {

// What has been cut stays in its place, ticked and dimmed.
std::optional<Change> draw_stops(const CutHands& hands);

}  // namespace editor
