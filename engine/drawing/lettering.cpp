#include "engine/drawing/lettering.h"

#include "engine/drawing/glyph_table.h"
#include "engine/drawing/printable_text.h"

namespace engine {
namespace {

FontFile font_of(LetterWeight weight) {
    return weight == LetterWeight::bold ? FontFile::roboto_medium : FontFile::roboto_regular;
}

struct FoundGlyph {
    FontFile font;
    Glyph glyph;
};

FoundGlyph glyph_in_fonts(char32_t character, LetterWeight weight) {
    const FontFile first = font_of(weight);
    if (const auto glyph = glyph_table(first).glyph_of(character)) return {first, *glyph};
    const GlyphTable& second = glyph_table(FontFile::dejavu_sans);
    return {FontFile::dejavu_sans, second.glyph_of(character).value_or(second.box())};
}

}  // namespace

double text_width(std::string_view text, double size, LetterWeight weight) {
    double width = 0;
    for (const char32_t character : characters_of(printable_text(text)))
        width += glyph_in_fonts(character, weight).glyph.advance;
    return width * size;
}

double capital_height(double size, LetterWeight weight) {
    return glyph_table(font_of(weight)).capital_height() * size;
}

double before_anchor(double width, TextAnchor anchor) {
    switch (anchor) {
        case TextAnchor::start:
            break;
        case TextAnchor::middle:
            return width / 2;
        case TextAnchor::end:
            return width;
    }
    return 0;
}

std::vector<TextRun> text_runs(std::string_view printable, LetterWeight weight) {
    std::vector<TextRun> runs;
    double at = 0;
    double at_in_run = 0;
    for (const char32_t character : characters_of(printable)) {
        const auto [font, glyph] = glyph_in_fonts(character, weight);
        if (runs.empty() || runs.back().font != font) {
            runs.push_back({font, at, {}});
            at_in_run = 0;
        }
        runs.back().letters.push_back({character, glyph.index, at_in_run});
        at += glyph.advance;
        at_in_run += glyph.font_advance;
    }
    return runs;
}

}  // namespace engine
