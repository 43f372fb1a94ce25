#include "editor/places/measure.h"

#include "editor/kit/widgets.h"
#include "editor/places/obstacle_list.h"
#include "editor/places/opening_list.h"

#include <algorithm>

namespace editor {
namespace {

constexpr float most_for_openings = 0.3F;

float height_of_shop() {
    return 2 * ImGui::GetFrameHeightWithSpacing() + ImGui::GetTextLineHeightWithSpacing() +
           scaled(10);
}

float openings_height(const Area& area, const Derived& derived) {
    if (derived.project->frames.empty()) return 0.0F;
    return std::min(area.height * most_for_openings, height_of_openings(derived));
}

}  // namespace

MeasureOutcome draw_measure(const Area& area,
                            const Derived& derived,
                            const RoomFacts& facts,
                            MeasureState state) {
    const PanelScope panel("Measure", area,
                           ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    MeasureOutcome outcome;
    const float rule = scaled(8) + 3 * ImGui::GetStyle().ItemSpacing.y;
    const float openings = openings_height(area, derived);
    const float below = height_of_shop() + rule + (openings > 0 ? openings + rule : 0);
    {
        const ChildScope list("room", {0, -below});
        outcome.asked = draw_obstacle_list(derived, facts, state.selection, state.dialog);
        if (!state.reading.empty()) {
            ImGui::AlignTextToFramePadding();
            draw_text(state.reading, Type::small, colour::quiet);
            log_item("reading", state.reading);
            ImGui::SameLine();
            if (draw_button("Stop reading", {.text = "stop", .weight = Weight::link})) {
                outcome.asked = "room.stop_reading";
            }
        }
    }
    draw_rule();
    {
        const ChildScope list("kept", {0, height_of_shop()});
        outcome.change = draw_room_fields(derived, state.shop);
    }
    if (openings > 0) {
        draw_rule();
        const ChildScope list("openings");
        draw_opening_list(derived, state.dialog);
    }
    return outcome;
}

}  // namespace editor
