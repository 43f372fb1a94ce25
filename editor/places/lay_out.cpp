#include "editor/places/lay_out.h"

#include "editor/kit/widgets.h"
#include "editor/places/dimension_list.h"
#include "editor/places/fastener_choice.h"
#include "editor/places/finding_list.h"
#include "editor/places/frame_list.h"

#include <algorithm>

namespace editor {
namespace {

// Findings keep their place at the foot of the panel, however long the list above them is.
float findings_height(const Area& area, const Derived& derived, FindingCards& cards) {
    const float most = area.height * 0.4F;
    return std::min(most, height_of_findings(derived, cards, area.width - scaled(32)) + scaled(34));
}

}  // namespace

std::optional<Change> draw_lay_out(const Area& area,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue,
                                   LayOutState state) {
    const PanelScope panel("Lay out", area,
                           ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    std::optional<Change> change;
    {
        const ChildScope list("stated", {0, -findings_height(area, derived, state.cards)});
        change = draw_dimension_list(derived, state.hand, state.selection, state.dialog);
        if (!derived.project->frames.empty()) {
            draw_rule();
            keep_first(change, draw_fastener_choice(derived, catalogue));
            keep_first(change,
                       draw_frame_list(derived, catalogue, state.selection, state.stock_filter));
        }
    }
    draw_rule();
    const ChildScope list("found");
    draw_finding_list(derived, state.cards, state.selection);
    return change;
}

}  // namespace editor
