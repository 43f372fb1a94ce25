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

// Of what members are put, and in which of several frames.
struct Choices {
    std::string frame;  // empty: there is but one
    std::string stock;
};

Choices choices_of(const SketchDesk& desk) {
    const auto& project = *desk.derived.project;
    const auto frame = sketched_frame(desk.derived, desk.state);
    Choices choices;
    if (desk.state.hand == SketchHand::none || !frame) return choices;
    if (project.frames.size() > 1) choices.frame = project.frames[*frame].name;
    const bool has_stock = desk.state.hand == SketchHand::members && !project.stock.empty();
    if (has_stock) choices.stock = sketched_stock(desk.derived, desk.state);
    return choices;
}

float width_of(const char* word, const std::string& chosen) {
    if (chosen.empty()) return 0.0F;
    return size_of_text(word, Type::small).x + button_width(chosen.c_str()) + scaled(12);
}

void draw_choices(const Choices& choices, const SketchDesk& desk) {
    const auto& project = *desk.derived.project;
    const auto draw = [](const char* word) {
        ImGui::AlignTextToFramePadding();
        draw_text(word, Type::small, colour::quiet);
        ImGui::SameLine();
    };
    if (!choices.frame.empty()) {
        draw("in");
        draw_pick("sketched frame", project.frames, choices.frame, desk.state.frame);
        if (!choices.stock.empty()) ImGui::SameLine();
    }
    if (choices.stock.empty()) return;
    draw("of");
    draw_pick("sketched stock", project.stock, choices.stock, desk.state.stock);
}

}  // namespace

void draw_sketch_bar(const Area& area, const SketchDesk& desk) {
    const StyleScope tight(ImGuiStyleVar_ItemSpacing, scaled(4, 4));
    float hands = scaled(12);
    for (const auto& row : sketch_hands) hands += button_width(row.label) + scaled(4);
    const auto choices = choices_of(desk);
    const float beside = width_of("in", choices.frame) + width_of("of", choices.stock);
    const bool is_one_row = hands + beside <= area.width - scaled(24);
    const float row_height = ImGui::GetFrameHeight() + scaled(4);
    Area bar{area.x + scaled(12), area.y + scaled(10), hands + (is_one_row ? beside : 0.0F),
             row_height + scaled(6)};
    if (!is_one_row) bar.height += row_height;
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
    if (is_one_row) {
        ImGui::SameLine();
    } else {
        ImGui::SetCursorScreenPos({bar.x + scaled(10), bar.y + scaled(5) + row_height});
    }
    draw_choices(choices, desk);
    desk.state.bar = bar;
}

std::string_view words_of_hand(SketchHand hand) {
    return hand == SketchHand::none ? std::string_view() : row_of(hand).help;
}

}  // namespace editor
