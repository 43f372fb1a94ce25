// The fonts, carried inside the program: text looks the same on any machine and in tests.
#pragma once

struct ImFontAtlas;

namespace editor {

// Fills the atlas anew, one font for each Type in its order, at that scale.
void load_fonts(ImFontAtlas& atlas, float scale);

}  // namespace editor
