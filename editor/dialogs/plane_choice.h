// Choosing a frame, and planes of its grid, from lists.
#pragma once

#include "editor/by_name.h"
#include "editor/places/choice_button.h"
#include "editor/view/plane_grid.h"

#include <algorithm>
#include <string>
#include <vector>

namespace editor {

template <class Things>
std::vector<ListEntry> entries_of(const Things& things) {
    std::vector<ListEntry> entries;
    for (const auto& thing : things) entries.push_back({thing.name});
    return entries;
}

// True when another one was chosen.
template <class Things>
bool choose_name(const std::string& name, const Things& things, std::string& chosen) {
    const auto* now = by_name(things, chosen);
    const auto at = now == nullptr ? things.size() : static_cast<std::size_t>(now - things.data());
    const auto clicked = draw_choice_button(name, name, entries_of(things), at);
    if (!clicked || things[*clicked].name == chosen) return false;
    chosen = things[*clicked].name;
    return true;
}

inline bool choose_plane(const std::string& name,
                         const std::vector<GridPlane>& planes,
                         std::size_t& chosen) {
    const auto clicked = draw_choice_button(name, name, entries_of(planes), chosen);
    if (!clicked || *clicked == chosen) return false;
    chosen = *clicked;
    return true;
}

}  // namespace editor
