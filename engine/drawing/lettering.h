// How texts look on paper, and exactly how wide they are there: the same in every kind of file.
#pragma once

#include "engine/drawing/ink.h"
#include "engine/fonts/font_files.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace engine {

enum class LetterWeight : std::uint8_t { regular, bold };

enum class TextAnchor : std::uint8_t { start, middle, end };

struct Lettering {
    double size = 3.5;  // mm; of the font, whose capitals are about 0.71 of it high
    LetterWeight weight = LetterWeight::regular;
    TextAnchor anchor = TextAnchor::start;  // which part of its baseline lies on the given place
    double turned_deg = 0;                  // anticlockwise about that place; 90 reads upwards
    Ink ink = Ink::black;
    bool has_ground = false;  // white under it, so that it is read upon a hatch

    bool operator==(const Lettering&) const = default;
};

// mm from the text's start to where a next letter would begin. What printable_text would replace
// counts as that.
double text_width(std::string_view text, double size, LetterWeight weight = LetterWeight::regular);

// mm from the baseline to the top of a capital letter.
double capital_height(double size, LetterWeight weight = LetterWeight::regular);

// mm from the start of a text of that width to its anchor.
double before_anchor(double width, TextAnchor anchor);

// A part of a text that one font draws.
struct TextRun {
    struct Letter {
        char32_t character = 0;
        std::uint32_t glyph = 0;
        double at = 0;  // in sizes of the font, from the start of the run, as the font has it
    };

    FontFile font = FontFile::roboto_regular;
    double at = 0;  // in sizes of the font, from the start of the text
    std::vector<Letter> letters;
};

// The runs of a printable text. Characters that the first font lacks come from the second; what
// both lack is drawn as a box, and is still in the file for whoever searches it.
std::vector<TextRun> text_runs(std::string_view printable, LetterWeight weight);

}  // namespace engine
