// Make, at the saw: one cut of a bar, to be ticked, spoiled or taken back.
#pragma once

#include "editor/places/saw_changes.h"

#include <cstddef>
#include <optional>

namespace editor {

std::optional<Change> draw_cut(const model::SawBar& bar, std::size_t index, const CutHands& hands);

}  // namespace editor
