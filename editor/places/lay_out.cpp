#include "editor/places/lay_out.h"

#include "editor/kit/widgets.h"
#include "editor/places/dimension_list.h"
#include "editor/places/fastener_choice.h"
#include "editor/places/finding_list.h"
#include "editor/places/frame_list.h"

#include <algorithm>

namespace editor {
namespace {

// Of the panel's height: findings at its foot and what the frames are made of above them keep their
// places, however long the lists are; the dimensions have the rest.
constexpr float most_for_findings = 0.32F;
constexpr float most_for_open_finding = 0.5F;
constexpr float most_for_notes = 0.18F;  // where nothing is to mend
constexpr float most_for_frames = 0.30F;

float findings_height(const Area& area, const Derived& derived, FindingCards& cards) {
    const bool is_open = open_group(derived, cards).has_value();
    const float most = is_open                      ? most_for_open_finding
                       : derived.summary.open() > 0 ? most_for_findings
                                                    : most_for_notes;
    return std::min(area.height * most,
                    height_of_findings(derived, cards, area.width - scaled(32)) + scaled(6));
}

float frames_height(const Area& area, const Derived& derived) {
    if (derived.project->frames.empty()) return 0.0F;
    return std::min(
        area.height * most_for_frames,
        ImGui::GetFrameHeightWithSpacing() + height_of_frames(derived, area.width - scaled(32)));
}

}  // namespace

std::optional<Change> draw_lay_out(const Area& area,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue,
                                   LayOutState state) {
    const PanelScope panel("Lay out", area,
                           ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    std::optional<Change> change;
    const float spacing = ImGui::GetStyle().ItemSpacing.y;
    const float rule = scaled(8) + 3 * spacing;  // draw_rule, and the space behind a list
    const float findings = findings_height(area, derived, state.cards);
    const float frames = frames_height(area, derived);
    const float below = findings + rule + (frames > 0 ? frames + rule : 0);
    {
        const ChildScope list("stated", {0, -below});
        change = draw_dimension_list(derived, state.hand, state.selection, state.bands,
                                     state.unfolded, state.dialog);
    }
    if (frames > 0) {
        draw_rule();
        const ChildScope list("made of", {0, frames});
        keep_first(change, draw_fastener_choice(derived, catalogue));
        keep_first(change, draw_frame_list(derived, catalogue, state.selection, state.stock_filter,
                                           state.dialog));
    }
    draw_rule();
    const ChildScope list("found");
    keep_first(change,
               draw_finding_list(derived, state.cards, state.selection,
                                 {catalogue, state.mends, state.dialog, state.place, state.bands}));
    return change;
}

}  // namespace editor
