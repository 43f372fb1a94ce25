// The window: `barwright edit`.
#pragma once

#include "editor/command_line.h"
#include "engine/render/camera.h"

#include <filesystem>
#include <iosfwd>
#include <optional>
#include <string>

namespace editor {

struct WindowOptions {
    std::optional<std::filesystem::path> project;
    engine::Viewport size{.width = 1600, .height = 1000};
    // Draws the window until it is at rest, writes it as a PNG file and ends.
    std::optional<std::filesystem::path> screenshot;
    std::string place;     // for a screenshot: one of place_rows by its name; empty: Lay out
    std::string sheet;     // for a screenshot of Make: one of its sheets by its name
    std::string choose;    // for a screenshot: a member or a joint to choose; empty: none
    bool is_dark = false;  // begins in the dark look
    // Prints a line "STATE {...}" whenever what is shown has changed and is at rest, for scripts
    // that drive the window. See report_state.h.
    bool reports_state = false;
    int samples = 4;  // anti-aliasing; 0 for none
};

// Runs until the user leaves. Errors - no display, no OpenGL 3.3, a file that cannot be read for a
// screenshot - go to `err`.
ExitStatus run_window(const WindowOptions& options, std::ostream& out, std::ostream& err);

}  // namespace editor
