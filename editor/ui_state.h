// What is on the screen but not in the file: selection, open dialogs, half-typed text, camera.
#pragma once

#include "editor/dialogs/dialog.h"
#include "editor/dimension_hand.h"
#include "editor/help_state.h"
#include "editor/kit/theme.h"
#include "editor/place.h"
#include "editor/places/buy.h"
#include "editor/places/dimension_list.h"
#include "editor/places/finding_list.h"
#include "editor/places/join.h"
#include "editor/places/lay_out_sections.h"
#include "editor/places/make.h"
#include "editor/places/prove.h"
#include "editor/places/section_choice.h"
#include "editor/scan_placing.h"
#include "editor/selection.h"
#include "editor/view/seeing_state.h"
#include "editor/view/sketch_state.h"
#include "editor/view/view_state.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

// One line that tells how something went, until the next thing happens.
struct Notice {
    std::string text;
    bool is_trouble = false;
};

struct UiState {
    Place place = Place::lay_out;
    Selection selection;
    DimensionHand hand;
    ViewState view;
    SeeingState seeing;
    SketchState sketch;
    Dialog dialog;
    std::vector<Dialog> interrupted;  // come back one by one when `dialog` closes; the last first
    std::optional<Notice> notice;
    MakeState make;
    ProveState prove;
    PurchaseWish purchase;
    OfferTyping offers;
    FindingCards cards;
    HelpState help;
    JoinState join;
    SawTyping saw;
    SectionTyping stock_filter;
    UnfoldedMeasures unfolded;
    LayOutSections sections;
    std::optional<ScanPlacing> placing;        // the view picks points of a scan
    std::optional<VentSource> vent_source;     // by which openings for air were sized last
    std::optional<model::Index> hovered_hole;  // in Resolved::holes: list and drawing agree
    float left_width = 0.0F;                   // design pixels; 0: the place's own
    float right_width = 0.0F;
    float text_scale = 1.0F;  // on top of the screen's own
    Theme theme = Theme::light;
    bool wants_to_leave = false;     // answered all questions: the program may end
    bool goes_on = false;            // something is still being worked out: draw another frame
    bool lets_go_of_fields = false;  // what the active field holds belongs to another project
};

// The table that is on the screen; null where there is none.
inline TableOrder* table_shown(UiState& ui) {
    if (ui.place == Place::prove) return ui.prove.shown();
    return ui.place == Place::make ? ui.make.shown() : nullptr;
}
inline const TableOrder* table_shown(const UiState& ui) {
    return table_shown(const_cast<UiState&>(ui));
}

}  // namespace editor
