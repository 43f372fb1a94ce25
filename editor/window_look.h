// How the window looks to this user: kept from one run to the next.
#pragma once

#include "editor/kit/theme.h"

#include <array>
#include <filesystem>

namespace editor {

struct WindowLook {
    Theme theme = Theme::light;
    float text_scale = 1.0F;  // on top of the screen's own
    bool has_dismissed_steps = false;
    std::array<bool, 3> folded{};  // of Lay out: LayOutSections::folded

    bool operator==(const WindowLook&) const = default;
};

inline constexpr float least_text_scale = 0.6F;
inline constexpr float most_text_scale = 2.5F;

// The defaults where nothing can be read or a value is none.
WindowLook read_window_look(const std::filesystem::path& state_folder);

// Where it cannot be written the next run looks as this one began.
void write_window_look(const WindowLook& look, const std::filesystem::path& state_folder);

}  // namespace editor
