// The dimensions, each on its strip of tape, with how far it may go below.
#pragma once

#include "editor/band_worker.h"
#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/dimension_hand.h"
#include "editor/selection.h"

#include <optional>
#include <set>
#include <string>

namespace editor {

// Obstacles whose measures are listed one by one; those of the others are one line each.
using UnfoldedMeasures = std::set<std::string, std::less<>>;

// How high the row of one is.
float height_of_dimension();

// `bands` says how far each may go; null: that is not worked out.
std::optional<Change> draw_dimension_list(const Derived& derived,
                                          DimensionHand& hand,
                                          const Selection& selection,
                                          const BandWorker* bands,
                                          UnfoldedMeasures& unfolded,
                                          Dialog& dialog);

}  // namespace editor
