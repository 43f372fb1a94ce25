#include "editor/places/start_card.h"

#include "editor/kit/widgets.h"

namespace editor {

std::string_view draw_start_card(const Area& view) {
    const float width = std::min(scaled(460), view.width - scaled(20));
    const float height = scaled(216);
    const Area area{view.x + (view.width - width) / 2, view.y + (view.height - height) * 0.42F,
                    width, height};
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(24, 20));
    const StyleScope outline(ImGuiStyleVar_WindowBorderSize, scaled(1));
    const PanelScope panel("Start", area, 0, Layer::floating);
    std::string_view asked;
    draw_text("Begin with a frame", Type::title);
    draw_wrapped(
        "Give its outside sizes and the bar it is made of. Every size can be changed "
        "afterwards, and everything follows.",
        Type::text, colour::quiet);
    ImGui::Dummy(scaled(1, 4));
    if (draw_button("Box frame", {.text = "New box frame\xE2\x80\xA6", .weight = Weight::main})) {
        asked = "frame.box";
    }
    ImGui::SameLine();
    if (draw_button("Stepped frame", {.text = "New stepped frame\xE2\x80\xA6"})) {
        asked = "frame.stepped";
    }
    if (draw_button("Open", {.text = "or open a project\xE2\x80\xA6", .weight = Weight::link})) {
        asked = "project.open";
    }
    draw_text("A project file can also be dropped on this window.", Type::small, colour::quiet);
    return asked;
}

}  // namespace editor
