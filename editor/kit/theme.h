// Colours, type and measures of the window: a quiet, bright workshop drawing.
#pragma once

#include <imgui.h>

namespace editor {

namespace colour {

inline constexpr ImU32 from_rgb(unsigned rgb, unsigned alpha = 255U) {
    return IM_COL32((rgb >> 16U) & 255U, (rgb >> 8U) & 255U, rgb & 255U, alpha);
}

inline constexpr ImU32 with_alpha(ImU32 packed, unsigned alpha) {
    return (packed & ~IM_COL32_A_MASK) | (alpha << IM_COL32_A_SHIFT);
}

// Set by set_style for the theme, before anything is drawn.
inline ImU32 paper;         // the ground of the drawing
inline ImU32 panel;         // what lies on it
inline ImU32 sheet;         // what is filled in or chosen from
inline ImU32 line;          // rules between things
inline ImU32 field;         // sunk: troughs
inline ImU32 field_hover;   // the same under the pointer
inline ImU32 field_press;   // the same, pressed
inline ImU32 edge;          // outlines of what can be taken hold of
inline ImU32 ink;           // text
inline ImU32 quiet;         // text of less weight
inline ImU32 faint;         // text that may be overlooked
inline ImU32 dye;           // marking-out dye as text and lines: selected, active
inline ImU32 dye_ground;    // the same as a ground, with white on it
inline ImU32 dye_deep;      // that ground, pressed
inline ImU32 dye_wash;      // the same, a thin coat
inline ImU32 dye_coat;      // the same, a thicker one
inline ImU32 scribed;       // lines on the dye
inline ImU32 scribed_soft;  // lines on the dye, of less weight
inline ImU32 tape;          // the strip of tape measure
inline ImU32 tape_hover;
inline ImU32 tape_edge;
inline ImU32 tape_mark;
inline ImU32 tape_text;
inline ImU32 tape_ink;  // its value
inline ImU32 band;      // how far a dimension may go
inline ImU32 amber;     // look at this
inline ImU32 amber_ground;
inline ImU32 amber_edge;
inline ImU32 red;  // this is wrong
inline ImU32 red_ground;
inline ImU32 red_edge;
inline ImU32 note_ground;
inline ImU32 metal;  // bar, drawn flat
inline ImU32 metal_edge;
inline ImU32 shade;  // over what a question covers

}  // namespace colour

enum class Type { text, small, strong, title, number };

inline constexpr float text_size = 15.0F;  // px at scale 1

// The font of that kind, as loaded by load_fonts.
ImFont* font(Type type);

// Design pixels times the scale of the window.
float scaled(float pixels);
ImVec2 scaled(float x, float y);

enum class Theme { light, dark };

// Sets all colours, and the measures of Dear ImGui for that scale.
void set_style(float scale, Theme theme);

}  // namespace editor
