#include "editor/view/cut_handle.h"

#include "editor/dimension_values.h"
#include "editor/kit/widgets.h"
#include "editor/view/on_screen.h"
#include "editor/view/tape_ends.h"

#include <glm/geometric.hpp>
#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace editor {
namespace {

constexpr double nm = 1.0e6;     // in a millimetre
constexpr double border = 30.0;  // mm beyond what is cut

using Corners = std::array<glm::dvec3, 4>;

Corners corners_of(const CutThrough& cut, const engine::SceneBounds& box) {
    const int k = static_cast<int>(model::index_of(cut.axis));
    const int a = (k + 1) % 3;
    const int b = (k + 2) % 3;
    Corners corners;
    for (std::size_t i = 0; i < 4; ++i) {
        glm::dvec3 at{0.0};
        at[k] = static_cast<double>(cut.at) / nm;
        at[a] = i == 1 || i == 2 ? box.hi[a] + border : box.lo[a] - border;
        at[b] = i >= 2 ? box.hi[b] + border : box.lo[b] - border;
        corners[i] = at;
    }
    return corners;
}

void draw_outline(const Area& area, const ViewState& view, const Corners& corners) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    for (std::size_t i = 0; i < 4; ++i) {
        const auto from = on_screen(area, view, corners[i]);
        const auto to = on_screen(area, view, corners[(i + 1) % 4]);
        if (!from || !to) continue;
        on.AddLine(*from, *to, colour::with_alpha(colour::dye, 150), scaled(1.2F));
    }
}

// The uppermost corner of it in the view, below the bar: there it hides least of what is cut.
ImVec2 tag_place(
    const Area& area, const ViewState& view, const Corners& corners, ImVec2 size, const Area& bar) {
    ImVec2 best{area.x + area.width / 2, area.y + area.height / 2};
    float least = 1.0e9F;
    for (const auto& corner : corners) {
        const auto at = on_screen(area, view, corner);
        if (!at || at->y >= least) continue;
        least = at->y;
        best = *at;
    }
    const float right = area.x + area.width - size.x - scaled(6);
    const float top = std::max(area.y, bar.y + bar.height) + scaled(6);
    const float low = area.y + area.height - size.y - scaled(48);
    return {
        std::clamp(best.x - size.x / 2, area.x + scaled(6), std::max(area.x + scaled(6), right)),
        std::clamp(best.y - size.y / 2, top, std::max(top, low))};
}

// How many mm along the axis a movement of the pointer is worth; end on, up is away.
double mm_of(ImVec2 by, const CutThrough& cut, const ViewState& view, const glm::dvec3& middle) {
    const float scale = ImGui::GetIO().DisplayFramebufferScale.x;
    const glm::dvec2 moved{static_cast<double>(by.x * scale), static_cast<double>(by.y * scale)};
    glm::dvec3 axis{0.0};
    axis[static_cast<int>(model::index_of(cut.axis))] = 1.0;
    const auto from = engine::pixel_of(view.camera, middle, view.viewport);
    const auto to = engine::pixel_of(view.camera, middle + axis * 10.0, view.viewport);
    const double pixel = engine::mm_per_pixel(view.camera, view.viewport);
    if (!from || !to) return 0.0;
    const auto along = (*to - *from) / 10.0;
    const double speed = glm::length(along);
    if (speed * pixel > 0.15) return glm::dot(moved, along / speed) / speed;
    const double away = glm::dot(axis, engine::forward_of(view.camera)) < 0.0 ? 1.0 : -1.0;
    return away * moved.y * pixel;
}

std::string tag_words(const CutThrough& cut, const engine::TapeStyle& shown) {
    constexpr std::array ways{"across ", "along ", "up "};
    return "cut " + std::string(ways[model::index_of(cut.axis)]) +
           tape_words(static_cast<double>(cut.at), shown);
}

void draw_tag(ImVec2 at, ImVec2 size, const std::string& words, bool is_hot) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 end{at.x + size.x, at.y + size.y};
    on.AddRectFilled(at, end, is_hot ? colour::tape_hover : colour::tape, scaled(3));
    on.AddRect(at, end, colour::tape_edge, scaled(3));
    draw_text_at(on, {at.x + scaled(9), at.y + scaled(4)}, words, Type::strong, colour::tape_ink);
}

// Starts where it was taken hold of, so that nothing of a pull is lost to the marks.
void pull(SeeingState& seeing,
          const ViewState& view,
          const glm::dvec3& middle,
          const CutRange& range,
          const engine::TapeStyle& shown) {
    if (!ImGui::IsItemActive()) {
        seeing.cut_pulled.reset();
        return;
    }
    if (!seeing.cut_pulled) {
        seeing.cut_pulled = 0.0F;
        seeing.cut_before = seeing.cut->at;
    }
    const ImVec2 by = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0F);
    const double moved = mm_of(by, *seeing.cut, view, middle);
    if (moved == 0.0) return;
    seeing.cut->at = cut_place(static_cast<double>(seeing.cut_before) + moved * nm, range, shown);
}

}  // namespace

CutRange cut_range(const engine::SceneData& scene, model::Axis axis) {
    const auto box = engine::bounds_of(scene);
    if (engine::is_empty(box)) return {};
    const int k = static_cast<int>(model::index_of(axis));
    return {std::llround(box.lo[k] * nm), std::llround(box.hi[k] * nm)};
}

model::Nm cut_place(double at, const CutRange& range, const engine::TapeStyle& shown) {
    const auto step = static_cast<double>(hand_step(shown).nm());
    const auto on_step = static_cast<model::Nm>(std::llround(std::round(at / step) * step));
    return std::clamp(on_step, range.least, std::max(range.least, range.most));
}

Area draw_cut_handle(const Area& area,
                     const Derived& derived,
                     const engine::SceneData& scene,
                     const ViewState& view,
                     SeeingState& seeing) {
    if (!seeing.cut || seeing.way.alone) return {};
    const auto solid = engine::bounds_of(scene.solid);
    const auto box = engine::is_empty(solid) ? engine::bounds_of(scene) : solid;
    if (engine::is_empty(box)) return {};
    const auto corners = corners_of(*seeing.cut, box);
    draw_outline(area, view, corners);
    const auto& shown = derived.project->shown;
    const std::string words = tag_words(*seeing.cut, shown);
    const ImVec2 size{size_of_text(words, Type::strong).x + scaled(18), scaled(26)};
    const ImVec2 at = tag_place(area, view, corners, size, seeing.bar);
    ImGui::SetCursorScreenPos(at);
    ImGui::InvisibleButton("cut", size);
    log_item("cut", words);
    const bool is_hot = ImGui::IsItemHovered() || ImGui::IsItemActive();
    if (is_hot) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeAll);
    const auto middle = (corners[0] + corners[2]) / 2.0;
    pull(seeing, view, middle, cut_range(scene, seeing.cut->axis), shown);
    draw_tag(at, size, words, is_hot);
    return {at.x, at.y, size.x, size.y};
}

}  // namespace editor
