// The dimensions, each on its strip of tape with its formula and limits below.
#pragma once

#include "editor/band_worker.h"
#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/dimension_hand.h"
#include "editor/selection.h"

#include <optional>

namespace editor {

// `bands` says how far each may go; null: that is not worked out.
std::optional<Change> draw_dimension_list(const Derived& derived,
                                          DimensionHand& hand,
                                          const Selection& selection,
                                          const BandWorker* bands,
                                          Dialog& dialog);

}  // namespace editor
