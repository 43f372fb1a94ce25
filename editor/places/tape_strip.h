// A strip of tape measure that shows a dimension: click it to type, pull it to change it.
#pragma once

#include "editor/dimension_hand.h"

#include <imgui.h>

#include <optional>
#include <string>

namespace editor {

struct TapeStrip {
    std::string strip;  // which one of the dimension: "list" or "view"
    ImVec2 at;          // upper left corner
    ImVec2 size;
    bool shows_name = false;
    bool is_marked = false;  // a finding that is chosen concerns it
};

// What the strip was pulled by, in pixels, while the mouse holds it.
struct StripPull {
    bool is_held = false;
    ImVec2 by{0, 0};
    bool is_coarse = false;  // Shift: eight steps where there was one
};

struct StripOutcome {
    std::optional<Change> change;
    StripPull pull;
};

// Steps of the tape per pixel are up to the caller when `pull` is held; see change_by_pull.
StripOutcome draw_tape_strip(const TapeStrip& look,
                             const model::Dimension& dimension,
                             const Derived& derived,
                             DimensionHand& hand);

// A pull along the strip: one graduation a pixel.
std::optional<Change> change_by_pull(const StripPull& pull,
                                     const Derived& derived,
                                     const DimensionHand& hand);

}  // namespace editor
