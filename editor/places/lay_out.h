// Lay out: the dimensions, what the frames are made of, and what there is to look at.
#pragma once

#include "editor/band_worker.h"
#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/dimension_hand.h"
#include "editor/kit/scopes.h"
#include "editor/places/dimension_list.h"
#include "editor/places/finding_list.h"
#include "editor/places/lay_out_sections.h"
#include "editor/places/section_choice.h"
#include "editor/selection.h"

#include <optional>
#include <string>

namespace editor {

struct LayOutState {
    DimensionHand& hand;
    Selection& selection;
    Dialog& dialog;
    SectionTyping& stock_filter;
    FindingCards& cards;
    UnfoldedMeasures& unfolded;
    LayOutSections& sections;
    MendBoard& mends;
    Place& place;
    const BandWorker* bands = nullptr;
};

std::optional<Change> draw_lay_out(const Area& area,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue,
                                   LayOutState state);

}  // namespace editor
