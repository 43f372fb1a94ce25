// Which glyph of a font draws a character, and how far the pen moves on behind it.
#pragma once

#include "engine/fonts/font_files.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace engine {

struct Glyph {
    std::uint32_t index = 0;  // in its font; 0 is the box for what the font lacks
    // How far on the next letter begins, in sizes of the font: in the font, and on paper, where a
    // PDF tells it in whole thousandths.
    double font_advance = 0;
    double advance = 0;
};

class GlyphTable {
public:
    explicit GlyphTable(FontFile file);

    // No value: the font lacks the character.
    std::optional<Glyph> glyph_of(char32_t character) const;
    Glyph box() const { return box_; }
    // Height of a capital letter in sizes of the font.
    double capital_height() const { return capital_height_; }

private:
    struct Entry {
        char32_t character;
        Glyph glyph;
    };

    std::vector<Entry> entries_;  // by character
    Glyph box_;
    double capital_height_ = 0;
};

// Read from the font once.
const GlyphTable& glyph_table(FontFile file);

}  // namespace engine
