#include "editor/view/sketch_view.h"

#include "editor/kit/hover_help.h"
#include "editor/kit/widgets.h"

#include <imgui.h>

#include <algorithm>
#include <string>

namespace editor {
namespace {

bool has_pointer(const SketchState& state) {
    return state.pressed || (state.hand != SketchHand::none && state.target.is_something());
}

bool was_clicked_right() {
    const ImGuiIO& io = ImGui::GetIO();
    return io.MouseReleased[1] && io.MouseDragMaxDistanceSqr[1] < scaled(3) * scaled(3);
}

class GridDrawing {
public:
    GridDrawing(const Area& area, const PlaneGrid& grid, const ViewState& view, float pixel_scale)
        : area_{area}, grid_{grid}, view_{view}, pixel_scale_{pixel_scale} {}

    std::optional<ImVec2> place(const GridNode& node) const {
        const auto at =
            engine::pixel_of(view_.camera, in_room(grid_, point_of(grid_, node)), view_.viewport);
        if (!at) return std::nullopt;
        return ImVec2{area_.x + static_cast<float>(at->x) / pixel_scale_,
                      area_.y + static_cast<float>(at->y) / pixel_scale_};
    }

    void line(const GridSegment& segment, ImU32 ink, float thick) const {
        const auto from = place(segment.from);
        const auto to = place(segment.end());
        if (from && to) ImGui::GetWindowDrawList()->AddLine(*from, *to, ink, thick);
    }

    void node(const GridNode& node, ImU32 ink, float radius) const {
        if (const auto at = place(node))
            ImGui::GetWindowDrawList()->AddCircleFilled(*at, radius, ink, 12);
    }

private:
    const Area& area_;
    const PlaneGrid& grid_;
    const ViewState& view_;
    float pixel_scale_;
};

void draw_nodes(const GridDrawing& drawing, const PlaneGrid& grid, const SketchState& state) {
    const bool are_aims = state.hand == SketchHand::braces;
    for (const auto& node : nodes_of(grid)) {
        drawing.node(node, colour::with_alpha(colour::dye, are_aims ? 200 : 120),
                     scaled(are_aims ? 3.5F : 2.0F));
    }
    if (state.begun) drawing.node(*state.begun, colour::dye, scaled(6));
    if (state.target.node) drawing.node(*state.target.node, colour::dye, scaled(6));
}

}  // namespace

SketchMouse use_sketch_mouse(const SketchDesk& desk, glm::dvec2 pixel, double pixel_scale) {
    const ImGuiIO& io = ImGui::GetIO();
    auto& state = desk.state;
    const bool is_over = ImGui::IsItemHovered() || ImGui::IsItemActive();
    if (is_over && was_clicked_right() && state.hand != SketchHand::none) give_up(state);
    SketchMouse mouse;
    mouse.has_pointer = has_pointer(state);
    mouse.change =
        use_pointer(desk, {.pixel = pixel,
                           .scale = pixel_scale * static_cast<double>(scaled(1)),
                           .is_over = is_over && !desk.view.is_turning,
                           .is_pressed = ImGui::IsItemActivated() && io.MouseClicked[0],
                           .is_released = ImGui::IsItemDeactivated() && io.MouseReleased[0],
                           .is_wide = io.KeyShift});
    mouse.has_pointer = mouse.has_pointer || has_pointer(state);
    return mouse;
}

void draw_sketch_grid(const Area& area, const SketchDesk& desk, float pixel_scale) {
    const auto& state = desk.state;
    const auto frame = sketched_frame(desk.derived, state);
    if (state.hand == SketchHand::none || !frame) return;
    const auto grid = plane_grid(desk.derived, *frame);
    const GridDrawing drawing(area, grid, desk.view, pixel_scale);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    on.PushClipRect({area.x, area.y}, {area.x + area.width, area.y + area.height}, true);
    for (const auto& segment : segments_of(grid)) {
        drawing.line(segment, colour::with_alpha(colour::dye, 95), scaled(1));
    }
    if (state.target.segment) drawing.line(*state.target.segment, colour::dye, scaled(3));
    draw_nodes(drawing, grid, state);
    on.PopClipRect();
}

void draw_sketch_words(const SketchDesk& desk) {
    const auto& trial = desk.state.trial;
    if (!trial || (trial->title.empty() && trial->refusal.empty()) || is_typing()) return;
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(10, 7));
    const TooltipScope tooltip;
    constexpr float width = 320.0F;
    const WrapScope wrap(scaled(width));
    if (!trial->title.empty()) draw_text(trial->title, Type::strong);
    if (!trial->words.empty()) draw_text(trial->words, Type::small, colour::quiet);
    if (!trial->refusal.empty()) draw_text(trial->refusal, Type::small, colour::red);
    constexpr std::size_t most = 3;
    for (std::size_t i = 0; i < std::min(most, trial->findings.size()); ++i) {
        const auto& finding = trial->findings[i];
        draw_text(finding.text, Type::small, finding.is_error ? colour::red : colour::amber);
    }
    if (trial->findings.size() > most) {
        draw_text("and " + std::to_string(trial->findings.size() - most) + " more", Type::small,
                  colour::quiet);
    }
    const auto& io = ImGui::GetIO();
    log_rectangle("pointed at", {io.MousePos.x, io.MousePos.y, io.MousePos.x, io.MousePos.y, true,
                                 true, trial->title + ": " + trial->words});
}

}  // namespace editor
