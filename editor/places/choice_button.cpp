#include "editor/places/choice_button.h"

#include "editor/kit/scopes.h"
#include "editor/kit/term.h"
#include "editor/kit/widgets.h"

#include <algorithm>

namespace editor {
namespace {

std::optional<std::size_t> draw_list(const std::vector<ListEntry>& entries,
                                     std::size_t chosen,
                                     float room) {
    const float line = ImGui::GetTextLineHeightWithSpacing();
    const float height = line * static_cast<float>(entries.size()) + scaled(4);
    float width = scaled(200);
    for (const auto& entry : entries) {
        width = std::max(width, size_of_text(entry.text, Type::text).x + scaled(24));
    }
    width = std::min(width, ImGui::GetIO().DisplaySize.x - scaled(60));
    const ChildScope list("entries", {width, std::min({scaled(320), room, height})});
    std::optional<std::size_t> clicked;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const auto& entry = entries[i];
        if (entry.is_heading) {
            draw_text(entry.text, Type::small, colour::quiet);
        } else if (draw_row(entry.text, entry.text, i == chosen).clicked) {
            clicked = i;
        }
        if (i == chosen && ImGui::IsWindowAppearing()) ImGui::SetScrollHereY();
    }
    return clicked;
}

}  // namespace

std::optional<std::size_t> draw_choice_button(const std::string& name,
                                              const std::string& word,
                                              const std::vector<ListEntry>& entries,
                                              std::size_t chosen) {
    if (!word.empty()) {
        ImGui::AlignTextToFramePadding();
        draw_term(word, colour::quiet);
        ImGui::SameLine(scaled(104));
    }
    const std::string text = chosen < entries.size() ? entries[chosen].text : std::string();
    const float width = ImGui::GetContentRegionAvail().x;
    const std::string popup = name + " list";
    if (draw_button(name, {.text = text_with_arrow(text, width), .width = width})) {
        ImGui::OpenPopup(popup.c_str());
    }
    const float room = popup_room();
    const PopupScope open(popup.c_str());
    if (!open) return std::nullopt;
    const auto clicked = draw_list(entries, chosen, room);
    if (clicked) ImGui::CloseCurrentPopup();
    return clicked;
}

}  // namespace editor
