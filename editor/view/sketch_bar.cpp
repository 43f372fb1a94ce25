// The hands for laying out, at the top of the view.
#include "editor/kit/widgets.h"
#include "editor/view/sketch_hands.h"
#include "editor/view/sketch_view.h"

#include <imgui.h>

#include <algorithm>
#include <string>

namespace editor {
namespace {

void draw_ground(const Area& at) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 end{at.x + at.width, at.y + at.height};
    on.AddRectFilled({at.x, at.y}, end, colour::with_alpha(colour::panel, 235), scaled(4));
    on.AddRect({at.x, at.y}, end, colour::line, scaled(4));
}

float button_width(const char* text) {
    return size_of_text(text, Type::text).x + 2 * ImGui::GetStyle().FramePadding.x;
}

// One of the named things, in a list that opens under a button.
template <class Things>
void draw_pick(const char* name,
               const Things& things,
               const std::string& now,
               std::string& chosen) {
    if (draw_button(name, {.text = now, .weight = Weight::plain})) ImGui::OpenPopup(name);
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(8, 8));
    const PopupScope open(name);
    if (!open) return;
    for (const auto& thing : things) {
        if (ImGui::MenuItem(thing.name.c_str(), nullptr, thing.name == now)) chosen = thing.name;
        log_item(thing.name);
    }
}

void draw_choices(const Area& area, const SketchDesk& desk, float y) {
    const auto& project = *desk.derived.project;
    const auto frame = sketched_frame(desk.derived, desk.state);
    if (!frame) return;
    const bool has_stock = desk.state.hand == SketchHand::members && !project.stock.empty();
    const bool has_frames = project.frames.size() > 1;
    if (!has_stock && !has_frames) return;
    ImGui::SetCursorScreenPos({area.x + scaled(22), y});
    if (has_frames) {
        ImGui::AlignTextToFramePadding();
        draw_text("in", Type::small, colour::quiet);
        ImGui::SameLine();
        draw_pick("sketched frame", project.frames, project.frames[*frame].name, desk.state.frame);
        if (has_stock) ImGui::SameLine();
    }
    if (!has_stock) return;
    ImGui::AlignTextToFramePadding();
    draw_text("of", Type::small, colour::quiet);
    ImGui::SameLine();
    draw_pick("sketched stock", project.stock, sketched_stock(desk.derived, desk.state),
              desk.state.stock);
}

// What the hand does; and under it, of what and where.
void draw_at_work(const Area& area, const SketchDesk& desk, float y) {
    const auto& row = row_of(desk.state.hand);
    const auto& project = *desk.derived.project;
    const bool has_choices = project.frames.size() > 1 ||
                             (desk.state.hand == SketchHand::members && !project.stock.empty());
    const float width = std::min(area.width - scaled(24), scaled(470));
    const ImVec2 size = size_of_text(row.help, Type::small, width - scaled(20));
    const float choices = has_choices ? ImGui::GetFrameHeight() + scaled(6) : 0.0F;
    draw_ground({area.x + scaled(12), y, width, size.y + scaled(12) + choices});
    draw_wrapped_at(*ImGui::GetWindowDrawList(), {area.x + scaled(22), y + scaled(6)}, row.help,
                    Type::small, colour::ink, width - scaled(20));
    log_rectangle("at work", {area.x, y, area.x + width, y + size.y, true, true, row.label});
    if (has_choices) draw_choices(area, desk, y + size.y + scaled(10));
}

}  // namespace

void draw_sketch_bar(const Area& area, const SketchDesk& desk) {
    const StyleScope tight(ImGuiStyleVar_ItemSpacing, scaled(4, 4));
    float width = scaled(12);
    for (const auto& row : sketch_hands) width += button_width(row.label) + scaled(4);
    const float height = ImGui::GetFrameHeight() + scaled(10);
    const Area bar{area.x + scaled(12), area.y + scaled(10), std::min(width, area.width), height};
    draw_ground(bar);
    ImGui::SetCursorScreenPos({bar.x + scaled(6), bar.y + scaled(5)});
    bool is_first = true;
    for (const auto& row : sketch_hands) {
        if (!is_first) ImGui::SameLine();
        is_first = false;
        const bool is_at_work = desk.state.hand == row.hand;
        if (draw_button(row.label, {.weight = is_at_work ? Weight::main : Weight::link})) {
            take_hand(desk.state, is_at_work ? SketchHand::none : row.hand);
        }
        draw_hint(row.hint);
    }
    if (desk.state.hand != SketchHand::none) {
        draw_at_work(area, desk, bar.y + bar.height + scaled(5));
    }
}

}  // namespace editor
