#include "editor/places/first_steps_card.h"

#include "editor/kit/widgets.h"

#include <algorithm>
#include <string>

namespace editor {
namespace {

constexpr float card_width = 286.0F;

// A ring with its number, or on dye with a tick where the step is done.
void draw_ring(ImVec2 middle, int number, const FirstStep& step, bool is_next) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const float radius = scaled(9.5F);
    if (step.is_done) {
        on.AddCircleFilled(middle, radius, colour::dye_ground, 24);
        const float s = scaled(1);
        on.AddLine({middle.x - 4 * s, middle.y}, {middle.x - 1 * s, middle.y + 3 * s},
                   colour::scribed, scaled(1.8F));
        on.AddLine({middle.x - 1 * s, middle.y + 3 * s}, {middle.x + 4 * s, middle.y - 4 * s},
                   colour::scribed, scaled(1.8F));
        return;
    }
    const ImU32 ink = is_next ? colour::dye : colour::quiet;
    on.AddCircle(middle, radius, ink, 24, scaled(1.4F));
    draw_text_at(on, {middle.x, middle.y - scaled(8)}, std::to_string(number), Type::small, ink,
                 Align::middle);
}

bool draw_step(const FirstStep& step, int number, bool is_next) {
    const float indent = scaled(30);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    draw_ring({at.x + scaled(10), at.y + scaled(12)}, number, step, is_next);
    ImGui::Indent(indent);
    const std::string name(step.name);
    bool clicked = false;
    if (is_next) {
        clicked = draw_button(name, {.text = step.title, .weight = Weight::main});
        draw_wrapped(step.how, Type::small, colour::quiet);
    } else {
        clicked = draw_button(name, {.text = step.title, .weight = Weight::link});
        if (!step.is_done) draw_hint(step.how);
    }
    log_item(name + " state", step.is_done ? "done" : "open");
    ImGui::Unindent(indent);
    return clicked;
}

float height_of(const std::array<FirstStep, 3>& steps, std::size_t next) {
    const float line = ImGui::GetFrameHeightWithSpacing();
    float height = 4 * line + scaled(26);
    if (next < steps.size()) {
        height += size_of_text(steps[next].how, Type::small, scaled(card_width - 66)).y + scaled(6);
    }
    return height;
}

}  // namespace

StepsOutcome draw_first_steps(const Area& panel, const std::array<FirstStep, 3>& steps) {
    const auto at = std::find_if(steps.begin(), steps.end(),
                                 [](const FirstStep& step) { return !step.is_done; });
    const auto next = static_cast<std::size_t>(at - steps.begin());
    const float width = std::min(scaled(card_width), panel.width - scaled(16));
    const float height = height_of(steps, next);
    const Area area{panel.x + scaled(8), panel.y + panel.height - height - scaled(8), width,
                    height};
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(14, 10));
    const StyleScope outline(ImGuiStyleVar_WindowBorderSize, scaled(1));
    const PanelScope card("First steps", area, ImGuiWindowFlags_NoScrollbar, Layer::floating);
    StepsOutcome outcome;
    ImGui::AlignTextToFramePadding();
    draw_text(at == steps.end() ? "All three strokes are done" : "Three strokes to begin with",
              Type::strong);
    const float close = size_of_text("Hide", Type::text).x + scaled(18);
    ImGui::SameLine(width - close - scaled(14));
    outcome.is_dismissed = draw_button("Hide", {.weight = Weight::link});
    draw_hint("Not shown again; \"First steps\" under View brings it back");
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (draw_step(steps[i], static_cast<int>(i) + 1, i == next))
            outcome.command = steps[i].command;
    }
    return outcome;
}

}  // namespace editor
