// How holes are told apart where a piece is drawn flat: by lines alone, so that a copy in black and
// white says the same.
#pragma once

#include "model/schedule/hole_sign.h"

#include <imgui.h>

#include <vector>

namespace editor {

using model::HoleSign;
using model::sign_of;
using model::words_of;

// `is_matched`: with the flag of a hole that is drilled through its mate.
struct HoleLook {
    HoleSign sign = HoleSign::rivet;
    bool is_matched = false;
    float radius = 3.0F;
    ImU32 ink = 0;
};
void draw_hole_sign(ImDrawList& on, ImVec2 at, const HoleLook& look);

// Which signs a drawing has, each with its word.
struct HoleLegend {
    std::vector<HoleSign> signs;  // in the order of HoleSign
    bool has_matched = false;

    bool is_empty() const { return signs.empty(); }
};
HoleLegend hole_legend(const model::Resolved& resolved, const model::Piece& piece);
float height_of_legend(const HoleLegend& legend, float width);
void draw_legend(ImDrawList& on, ImVec2 at, const HoleLegend& legend, float width);

}  // namespace editor
