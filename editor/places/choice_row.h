// Buttons of which one is on, on as many lines as they need.
#pragma once

#include "editor/kit/widgets.h"

#include <string>
#include <vector>

namespace editor {

template <class Value>
struct RowChoice {
    Value value;
    const char* name = "";
    std::string text;
};

// In the line of the last item where a button with that text has room there.
inline void go_on_in_line(const std::string& text) {
    const auto& style = ImGui::GetStyle();
    const float width = size_of_text(text, Type::text).x + 2 * style.FramePadding.x;
    const float next = ImGui::GetItemRectMax().x + style.ItemSpacing.x + width;
    if (next <= ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x) ImGui::SameLine();
}

// The one that is on now.
template <class Value>
Value draw_choice_row(Value now, const std::vector<RowChoice<Value>>& choices) {
    Value next = now;
    for (const auto& it : choices) {
        if (&it != &choices.front()) go_on_in_line(it.text);
        const auto weight = it.value == now ? Weight::main : Weight::plain;
        if (draw_button(it.name, {.text = it.text, .weight = weight})) next = it.value;
    }
    return next;
}

}  // namespace editor
