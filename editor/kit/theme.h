// Colours, type and measures of the window: a quiet, bright workshop drawing.
#pragma once

#include <imgui.h>

namespace editor {

namespace colour {

inline constexpr ImU32 from_rgb(unsigned rgb, unsigned alpha = 255U) {
    return IM_COL32((rgb >> 16U) & 255U, (rgb >> 8U) & 255U, rgb & 255U, alpha);
}

inline constexpr ImU32 paper = from_rgb(0xf4f1ea);         // the ground of the drawing
inline constexpr ImU32 panel = from_rgb(0xfbfaf6);         // what lies on it
inline constexpr ImU32 line = from_rgb(0xe3dfd3);          // rules between things
inline constexpr ImU32 field = from_rgb(0xece7da);         // sunk: text fields, troughs
inline constexpr ImU32 edge = from_rgb(0xb9b4a7);          // outlines of what can be taken hold of
inline constexpr ImU32 ink = from_rgb(0x2b2a27);           // text
inline constexpr ImU32 quiet = from_rgb(0x6f6b61);         // text of less weight
inline constexpr ImU32 dye = from_rgb(0x2d3f86);           // marking-out dye: selected, active
inline constexpr ImU32 dye_deep = from_rgb(0x22306a);      // the same, pressed
inline constexpr ImU32 dye_wash = from_rgb(0xdfe6ff);      // the same, a thin coat
inline constexpr ImU32 scribed = from_rgb(0xffffff);       // lines on the dye
inline constexpr ImU32 scribed_soft = from_rgb(0xb9c5f2);  // lines on the dye, of less weight
inline constexpr ImU32 tape = from_rgb(0xf1c948);          // the strip of tape measure
inline constexpr ImU32 tape_hover = from_rgb(0xf6d664);
inline constexpr ImU32 tape_edge = from_rgb(0x8a6d10);
inline constexpr ImU32 tape_mark = from_rgb(0x5b4a0c);
inline constexpr ImU32 tape_text = from_rgb(0x4d3f0a);
inline constexpr ImU32 band = from_rgb(0x9fb08a);   // how far a dimension may go
inline constexpr ImU32 amber = from_rgb(0x9a6408);  // look at this
inline constexpr ImU32 amber_ground = from_rgb(0xf7ead0);
inline constexpr ImU32 amber_edge = from_rgb(0xd9b86a);
inline constexpr ImU32 red = from_rgb(0xa3281c);  // this is wrong
inline constexpr ImU32 red_ground = from_rgb(0xf8dfda);
inline constexpr ImU32 red_edge = from_rgb(0xd98f85);
inline constexpr ImU32 note_ground = from_rgb(0xf0ede4);
inline constexpr ImU32 metal = from_rgb(0xc9ccd0);  // bar, drawn flat
inline constexpr ImU32 metal_edge = from_rgb(0x8c9096);
inline constexpr ImU32 shade = from_rgb(0x2b2a27, 70);  // over what a question covers

}  // namespace colour

enum class Type { text, small, strong, title, number };

inline constexpr float text_size = 15.0F;  // px at scale 1

// The font of that kind, as loaded by load_fonts.
ImFont* font(Type type);

// Design pixels times the scale of the window.
float scaled(float pixels);
ImVec2 scaled(float x, float y);

// Sets colours and measures of Dear ImGui for that scale.
void set_style(float scale);

}  // namespace editor
